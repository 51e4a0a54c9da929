import { paintBox } from './kernels/optics/paint-box.ts';
import { darkestOfBox } from './kernels/palette/darkest-of.ts';
import { keptLibrary } from './kernels/palette/kept-library.ts';
import { paintsAllowed } from './kernels/palette/paints-allowed.ts';
import { searchedMixSize } from './kernels/palette/search-palette.ts';

/** Builds what every plan needs and no picture changes, while she is still choosing one. */
export async function warmTables(pause: () => Promise<void>): Promise<void> {
  await keptLibrary(paintsAllowed(paintBox, {}).paints, searchedMixSize, pause);
  await pause();
  darkestOfBox();
}
