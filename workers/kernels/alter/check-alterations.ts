import type { Alteration } from '../../../app/model/alteration.ts';

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
