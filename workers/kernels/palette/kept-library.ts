import type { Paint } from '../../../app/model/paint.ts';
import type { Checkpoint } from './checkpoint.ts';
import { buildMixLibrary, type MixLibrary } from './mix-library.ts';
import { largestPalette } from './paints-allowed.ts';

let kept: MixLibrary | undefined;

const sameBox = (one: readonly Paint[], two: readonly Paint[]): boolean =>
  one.length === two.length && one.every((paint, i) => paint === two[i]);

/**
 * The library of the last box asked for is kept: it is the dear part of a search and the same for every
 * picture. A cancelled build leaves the old one.
 */
export async function keptLibrary(
  paints: readonly Paint[],
  most: number,
  checkpoint: Checkpoint,
): Promise<MixLibrary> {
  if (kept && kept.most === most && sameBox(kept.paints, paints)) return kept;
  const built = await buildMixLibrary(paints, most, checkpoint);
  // That of a few chosen paints is made in no time and must not push out the box's.
  if (paints.length > largestPalette || !kept) kept = built;
  return built;
}
