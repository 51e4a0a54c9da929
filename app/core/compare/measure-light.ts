import type { Lab, Point } from '../colour/lab.ts';
import type { Checkpoint } from '../palette/checkpoint.ts';
import type { LabPlanes } from '../raster/linear-raster.ts';
import type { PixelSize } from '../raster/size.ts';
import { castShadow } from './cast-shadow.ts';
import { findLight, type SheetLight } from './even-light.ts';
import { type LightCell, lightCells, type SquaredSheet } from './light-cells.ts';
import { type MeasuredSheet, measureSheet, pixelStates } from './measured-sheet.ts';

/** After so many looks a shadow is as it is: each light is found outside the shadow of the one before. */
const looks = 2;

/** Cells on the sheet, or beside it, where no shadow lies. */
function outside(
  cells: readonly LightCell[],
  shadow: Uint8Array,
  { width, height }: PixelSize,
): LightCell[] {
  const half = Math.max(width, height) / 2;
  const nearest = (place: number, side: number): number =>
    Math.max(0, Math.min(side - 1, Math.floor(place * half + side / 2)));
  return cells.filter(({ x, y }) => !shadow[nearest(y, height) * width + nearest(x, width)]);
}

/**
 * The light on a squared sheet, and the sheet in even daylight; what lies in a shadow counts neither for the light nor
 * as measured. Null where too little is seen to judge the light.
 */
export async function measureLight(
  squared: SquaredSheet,
  expected: LabPlanes,
  slotMap: Uint8Array,
  paper: Lab,
  bare: readonly Point[] | undefined,
  checkpoint: Checkpoint,
): Promise<{ readonly light: SheetLight; readonly measured: MeasuredSheet } | null> {
  const cells = lightCells(squared, expected, paper, bare);
  await checkpoint(0.1);
  const { size } = squared;
  const lit = async (own: readonly LightCell[], part: number) => {
    const light = await findLight(own, paper[0], () => checkpoint(part));
    return light && { light, measured: measureSheet(squared, light) };
  };
  let found = await lit(cells, 0.2);
  await checkpoint(0.5);
  let shadow: Uint8Array | null = null;
  for (let look = 0; look < looks && found; look++) {
    const seen: Uint8Array | null = castShadow(found.measured, expected, slotMap, size);
    await checkpoint(0.6 + 0.2 * look);
    if (!seen) break;
    shadow = seen;
    found = (await lit(outside(cells, seen, size), 0.6 + 0.2 * look)) ?? found;
  }
  if (found && shadow) {
    const { states } = found.measured;
    for (let i = 0; i < states.length; i++)
      if (shadow[i] && states[i] !== pixelStates.missing) states[i] = pixelStates.shadow;
  }
  return found;
}
