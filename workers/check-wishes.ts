import type { PlanWishes } from '../app/model/plan-wishes.ts';
import { knownPaints } from './kernels/optics/paint-box.ts';
import { paintsAllowed } from './kernels/palette/paints-allowed.ts';
import { wishedPalette } from './kernels/plan/wished-palette.ts';

/**
 * Throws a plain Error named 'WishError', with a sentence for her, where her wishes for the palette
 * contradict each other: only a name and a message survive the way to the page.
 */
export function checkWishes(wishes: PlanWishes): void {
  try {
    paintsAllowed(knownPaints(wishes.ownPaints), wishedPalette(wishes));
  } catch (thrown) {
    if (!(thrown instanceof RangeError)) throw thrown;
    const error = new Error(thrown.message);
    error.name = 'WishError';
    throw error;
  }
}
