import { areSoundStrokes, type CutStroke } from './photo-stroke.ts';

/**
 * How an area is painted otherwise than it is in the photo: left out, as if what surrounds it went on
 * there; or one value (Munsell, 10 L*) lighter or darker.
 */
export type Change = 'leave-out' | 'lighter' | 'darker';

/** Over the cut-out; brush 0: all that lies within the line. The photo itself is never changed. */
export interface Alteration extends CutStroke {
  readonly change: Change;
}

/** Throws a RangeError with a sentence for her where a change can't be painted. */
export function checkAlterations(alterations: readonly Alteration[]): void {
  if (!areSoundStrokes(alterations) || alterations.some(({ path }) => path.length === 0)) {
    throw new RangeError('A change of the picture is not clear. Take it back and draw it anew.');
  }
}
