import { paintBox } from './kernels/optics/paint-box.ts';
import { keptLibrary } from './kernels/palette/kept-library.ts';
import { paintsAllowed } from './kernels/palette/paints-allowed.ts';
import { searchedMixSize } from './kernels/palette/search-palette.ts';

let known: number | undefined;

/**
 * L* of the darkest the built-in box reaches, as `darkestOfBox` finds it, but from the library of
 * mixes a plan needs anyway, and with pauses: worked out at one go it holds a cancel up too long.
 */
export async function darkestInSteps(pause: () => Promise<void>): Promise<number> {
  if (known !== undefined) return known;
  const library = await keptLibrary(paintsAllowed(paintBox, {}).paints, searchedMixSize, pause);
  known = library.groups.reduce((least, group) => Math.min(least, group.darkest), 100);
  return known;
}
