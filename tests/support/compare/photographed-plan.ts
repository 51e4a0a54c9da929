import type { CompareRequest } from '../../../app/core/compare/compare-sheet.ts';
import { noCheckpoint } from '../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../app/core/plan/build-plan.ts';
import type { Step, WashPlan } from '../../../app/core/plan/plan.ts';
import { rasterSize } from '../../../app/core/raster/size.ts';
import type { PictureReading } from '../../../app/core/reading/read-picture.ts';
import { madeOnce } from '../made-once.ts';
import { opened, readPhoto, reducePicture } from '../reading/rasters.ts';
import type { KnownChange } from './changed.ts';
import { type DrawnSheet, drawSheet } from './drawn-sheet.ts';
import { type Photographed, photographed } from './photographed.ts';
import type { Scene } from './scene.ts';

export interface PlannedPicture extends Pick<PictureReading, 'reading' | 'slotMap'> {
  readonly plan: WashPlan;
}

/** A photograph planned small, for a sheet of its own shape: once for all tests, not to be written into. */
export const plannedSmall = (
  path: string,
  chosen: readonly string[],
  rasterPx = 600,
): Promise<PlannedPicture> =>
  madeOnce(`planned small: ${path} ${chosen} ${rasterPx}`, async () => {
    const { raster } = await opened(path, rasterPx);
    const sheet = { widthMm: 381, heightMm: (381 * raster.height) / raster.width };
    const { reading, slotMap } = await readPhoto(path, rasterPx, sheet);
    const plan = await buildPlan(reading, { chosen }, noCheckpoint);
    return { reading, slotMap, plan };
  });

export const lastStep = ({ steps }: Pick<WashPlan, 'steps'>): Step => steps.at(-1) as Step;

const drawn = new WeakMap<Step, Map<KnownChange, DrawnSheet>>();

/** A sheet photographed in several scenes is drawn once. */
function drawnOnce(
  { reading, slotMap, plan }: PlannedPicture,
  step: Step,
  change: KnownChange,
): DrawnSheet {
  const sheets = drawn.get(step) ?? new Map<KnownChange, DrawnSheet>();
  drawn.set(step, sheets);
  const sheet = sheets.get(change) ?? drawSheet(reading, slotMap, plan, step, change.drawing);
  sheets.set(change, sheet);
  return sheet;
}

/** A plan painted with a known change, photographed, and asked about. */
export async function photographedPlan(
  picture: PlannedPicture,
  step: Step,
  change: KnownChange,
  scene: Scene,
): Promise<{ readonly request: CompareRequest; readonly shot: Photographed }> {
  const { reading, slotMap, plan } = picture;
  const shot = await photographed(drawnOnce(picture, step, change), scene);
  const { raster } = reducePicture(shot.rgba, shot, rasterSize(shot.width, shot.height));
  return { request: { photo: raster, reading, slotMap, plan, step: step.n }, shot };
}

/** The worst corner's distance from the truth, as a share of the sheet's longer side in the photo. */
export function cornerError(
  found: readonly (readonly [number, number])[],
  { corners, width, height }: Photographed,
): number {
  const place = ([x, y]: readonly [number, number]): [number, number] => [x * width, y * height];
  const truth = corners.map(place);
  const [a, b, , d] = truth as [
    [number, number],
    [number, number],
    [number, number],
    [number, number],
  ];
  const long = Math.max(Math.hypot(b[0] - a[0], b[1] - a[1]), Math.hypot(d[0] - a[0], d[1] - a[1]));
  const off = found
    .map(place)
    .map(([x, y], n) =>
      Math.hypot(x - (truth[n] as [number, number])[0], y - (truth[n] as [number, number])[1]),
    );
  return Math.max(...off) / long;
}
