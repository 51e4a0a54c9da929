import type { CutStroke } from './photo-stroke.ts';

/**
 * How an area is painted otherwise than it is in the photo: left out, as if what surrounds it went on
 * there; or one value (Munsell, 10 L*) lighter or darker.
 */
export type Change = 'leave-out' | 'lighter' | 'darker';

/** Over the cut-out; brush 0: all that lies within the line. The photo itself is never changed. */
export interface Alteration extends CutStroke {
  readonly change: Change;
}

/** More strokes than this are a slip of the program, not a painter's. */
const mostStrokes = 500;

/** Throws a RangeError with a sentence for her where a change can't be painted. */
export function checkAlterations(alterations: readonly Alteration[]): void {
  const sound = alterations.every(
    ({ path, brush }) =>
      brush >= 0 && brush <= 2 && path.length > 0 && path.flat().every(Number.isFinite),
  );
  if (!sound || alterations.length > mostStrokes) {
    throw new RangeError('A change of the picture is not clear. Take it back and draw it anew.');
  }
}
