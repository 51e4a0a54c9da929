import type { Lab } from '../../../app/model/lab.ts';
import type { PaintPatch } from '../../../app/model/paint-measure.ts';
import { defaultPaper } from '../optics/default-paper.ts';
import { surfaceFloor } from '../optics/surface.ts';
import { bandCount } from '../optics/wavelengths.ts';
import type { MeasuredPatch, PatchShare } from './measured-patch.ts';
import { xyzOfLab } from './xyz-of-lab.ts';

/** A step made by adding the same water again is off by so much. */
const stepDoubt = 0.15;
/** Paint laid over a line as for a step: by eye. */
const overDoubt = 0.25;
/** Her paint in a half and half mix: how strong it was laid on is not known. */
const halfDoubt = 0.7;
/** The other paint's: tubes differ in strength. */
const otherDoubt = 1;
/** A black line where it was not measured, L*: own guess. */
const usualBlack: Lab = [24, 0, 0];

/** Reflectance of a black line by its lightness: flat. */
function blackGround(patches: readonly PaintPatch[]): Float64Array {
  const { lab } = patches.find(({ is }) => is.kind === 'black') ?? { lab: usualBlack };
  const body = (xyzOfLab(lab)[1] - surfaceFloor.dry) / (1 - surfaceFloor.dry);
  return new Float64Array(bandCount).fill(Math.max(0.001, body));
}

/**
 * The patches as the fit takes them, the paint sought first in its list, then the others of
 * `otherIds`. `loadOf` turns an amount into a load of those, roughly. A bare black line is a ground,
 * not a patch: null keeps its place.
 */
export function patchDoubts(
  patches: readonly PaintPatch[],
  otherIds: readonly string[],
  loadOf: (amount: number) => number,
): (MeasuredPatch | null)[] {
  const black = blackGround(patches);
  const amounts = patches.flatMap(({ is }) => (is.kind === 'step' ? [is.amount] : []));
  const middle = amounts.sort((one, two) => one - two)[amounts.length >> 1] ?? 1;
  return patches.map(({ lab, is }) => {
    const own = (amount: number, doubt: number): PatchShare => ({ paint: 0, amount, doubt });
    if (is.kind === 'black') return null;
    if (is.kind === 'step') {
      return { lab, shares: [own(is.amount, stepDoubt)], ground: defaultPaper };
    }
    if (is.kind === 'over-black')
      return { lab, shares: [own(is.amount, overDoubt)], ground: black };
    const other = {
      paint: 1 + otherIds.indexOf(is.with),
      amount: loadOf(middle),
      doubt: otherDoubt,
    };
    return { lab, shares: [own(middle, halfDoubt), other], ground: defaultPaper };
  });
}
