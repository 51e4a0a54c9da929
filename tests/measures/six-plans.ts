import { basename } from 'node:path';
import { defaultPaperLab } from '../../app/core/paint/colour-of-washes.ts';
import { noCheckpoint } from '../../app/core/palette/checkpoint.ts';
import { darkestOf, usualPaints } from '../../app/core/palette/library/mix-library.ts';
import { buildPlan } from '../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../app/core/plan/plan.ts';
import { createPlanMemory } from '../../app/core/plan/plan-memory.ts';
import { readPicture } from '../../app/core/reading/read-picture.ts';
import type { Reading } from '../../app/core/reading/reading.ts';
import { sheetOf, turned } from '../../app/core/reference/sheet.ts';
import { cropToRaster, loadPhoto } from '../../app/tools/plan/load-photo.ts';
import { eightPhotographs } from '../support/reading/eight-photographs.ts';

/** A photograph as it is read for a quarter sheet; the lightness map is that of the simplified picture. */
export interface Photograph {
  readonly name: string;
  readonly reading: Reading;
  readonly slotMap: Uint8Array;
  readonly lightnessMap: Uint8Array;
}

export async function readPhotograph(file: string): Promise<Photograph> {
  const photo = await loadPhoto(file);
  const across = photo.width >= photo.height ? 'across' : 'upright';
  const { widthMm, heightMm } = turned(sheetOf('quarter', 'across'), across);
  const { raster, clipped } = cropToRaster(photo, { format: 'own', widthMm, heightMm });
  const read = await readPicture(
    {
      raster,
      clipped,
      sheet: { widthMm, heightMm },
      wishes: {},
      darkest: darkestOf(usualPaints),
      paper: defaultPaperLab[0],
    },
    noCheckpoint,
  );
  const name = /datasets-img-([^/]+)/.exec(file)?.[1] ?? basename(file);
  return { name, ...read };
}

export const sixPhotographs = [0, 1, 2, 4, 6, 7].map((n) => eightPhotographs[n] as string);

interface Planned {
  readonly photograph: Photograph;
  readonly plan: WashPlan;
}

async function plannedAll(): Promise<Planned[]> {
  const memory = createPlanMemory();
  const planned: Planned[] = [];
  for (const file of sixPhotographs) {
    const photograph = await readPhotograph(file);
    const plan = await buildPlan(photograph.reading, {}, noCheckpoint, memory);
    planned.push({ photograph, plan });
  }
  return planned;
}

let made: Promise<Planned[]> | null = null;

/** Six photographs with the plans made for them when nothing is wished for; made once a run. */
export function sixPlans(): Promise<readonly Planned[]> {
  made ??= plannedAll();
  return made;
}
