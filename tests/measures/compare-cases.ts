import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { CompareRequest } from '../../app/core/compare/compare-sheet.ts';
import type { Step } from '../../app/core/plan/plan.ts';
import {
  bandChanged,
  edgeHardened,
  type KnownChange,
  massMissing,
  nothingChanged,
  whiteLost,
} from '../support/compare/changed.ts';
import type { Photographed } from '../support/compare/photographed.ts';
import {
  lastStep,
  type PlannedPicture,
  photographedPlan,
  plannedSmall,
} from '../support/compare/photographed-plan.ts';
import { anyScene, type CastShadow, random, type Scene } from '../support/compare/scene.ts';
import { fewPaints } from '../support/few-paints.ts';
import { keptResult } from '../support/kept-result.ts';
import { sixPhotographs } from './six-plans.ts';

const photoPx = 1200;
const rasterPx = 800;

/** A painted sheet photographed by chance, beside its plan: drawn from a number alone. */
export interface CompareCase {
  readonly n: number;
  readonly picture: PlannedPicture;
  readonly step: Step;
  readonly change: KnownChange;
  readonly scene: Scene;
  readonly request: CompareRequest;
  readonly shot: Photographed;
}

/** What a plan is made with: everything in the core but what comes after it. */
const madeWith = readdirSync('app/core', { withFileTypes: true })
  .filter((each) => each.isDirectory() && !['compare', 'session', 'outline'].includes(each.name))
  .map(({ name }) => join('app/core', name));

/** The six photographs planned small; made once, and kept until the core makes them otherwise. */
export async function comparedPictures(): Promise<PlannedPicture[]> {
  const pictures: PlannedPicture[] = [];
  for (const [n, file] of sixPhotographs.entries())
    pictures.push(
      await keptResult(`compared-${n}`, madeWith, () =>
        plannedSmall(file, fewPaints.slice(0, 7), rasterPx),
      ),
    );
  return pictures;
}

/** What is painted otherwise in a case, in turn; null where the picture has no place for it. */
function changeOf(n: number, picture: PlannedPicture, step: Step): KnownChange | null {
  const { reading, slotMap, plan } = picture;
  const next = random(500 + n);
  const kind = n % 6;
  if (kind === 0) return nothingChanged;
  if (kind === 3) return massMissing(reading, slotMap, plan, step, next);
  if (kind === 4) return whiteLost(reading, slotMap, plan, next);
  if (kind === 5) return edgeHardened(reading, step);
  const by = (3 + 17 * next()) * (kind === 1 ? 1 : -1);
  const from = Math.floor(next() * reading.bands.length);
  for (let band = 0; band < 2 * reading.bands.length; band++) {
    const share = band < reading.bands.length ? 1 : 0.5;
    const change = bandChanged(plan, step, 1 + ((from + band) % reading.bands.length), by * share);
    if (change) return change;
  }
  return null;
}

/** What is painted and how it is photographed; null where the picture has no place for the change. */
export function drawnCase(
  n: number,
  pictures: readonly PlannedPicture[],
): Pick<CompareCase, 'n' | 'picture' | 'step' | 'change' | 'scene'> | null {
  const picture = pictures[(n + Math.floor(n / 6)) % pictures.length] as PlannedPicture;
  const washes = picture.plan.steps.filter(({ kind }) => kind === 'wash');
  const step =
    Math.floor(n / 6) % 2 === 0
      ? lastStep(picture.plan)
      : (washes[Math.floor(n / 12) % washes.length] as Step);
  const change = changeOf(n, picture, step);
  return change && { n, picture, step, change, scene: anyScene(n, photoPx) };
}

/** A shadow over between a tenth and a half of a sheet, leaving 0.35 to 0.75 of the light, its rim 4 to 30 mm wide. */
function anyShadow(n: number, { reading: { sheet } }: PlannedPicture): CastShadow {
  const next = random(9000 + n);
  for (let k = 0; k < 5; k++) next();
  const towards = 2 * Math.PI * next();
  const across = Math.abs(Math.cos(towards)) * sheet.widthMm;
  const half = (across + Math.abs(Math.sin(towards)) * sheet.heightMm) / 2;
  const fromMm = half * (0.1 + 0.7 * next());
  return { towards, fromMm, left: 0.35 + 0.4 * next(), rimMm: 4 + 26 * next() };
}

/** The case of a number, photographed, with a shadow over part of it or none; null where there is none. */
export async function compareCase(
  n: number,
  pictures: readonly PlannedPicture[],
  isShaded = false,
): Promise<CompareCase | null> {
  const drawn = drawnCase(n, pictures);
  if (!drawn) return null;
  const { picture, step, change } = drawn;
  const scene = isShaded ? { ...drawn.scene, shadow: anyShadow(n, picture) } : drawn.scene;
  return { ...drawn, scene, ...(await photographedPlan(picture, step, change, scene)) };
}
