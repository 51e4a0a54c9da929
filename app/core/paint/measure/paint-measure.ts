import type { Lab } from '../../colour/lab.ts';
import type { FramedColour, PatchFrame } from './measured-photo.ts';

/**
 * What a painted patch is. Amounts compare the steps of one paint: each step twice as thin is 16,
 * 8, 4, 2, 1.
 */
export type PatchMeaning =
  | { readonly kind: 'step'; readonly amount: number }
  /** The paint over a black line, as much as a step of that amount. */
  | { readonly kind: 'over-black'; readonly amount: number }
  /** The black line by itself. */
  | { readonly kind: 'black' }
  /** One part of it and one of another paint or of a white. */
  | { readonly kind: 'half'; readonly with: string };

/** A patch as measured: dry colour with the bare paper brought to the default paper. */
export interface PaintPatch {
  readonly lab: Lab;
  readonly is: PatchMeaning;
}

/** What a photo of her patches says of a paint. */
export interface PaintMeasure {
  /** K and S per unit load, 36 samples, as in `Paint`. */
  readonly K: readonly number[];
  readonly S: readonly number[];
  /** 0..1, and a sentence for the painter with what would help. */
  readonly sure: number;
  readonly why: string;
  /** Colour of every patch as the paint found would have it, in the order given. */
  readonly expected: readonly Lab[];
  /** Mean CIEDE2000 between the patches and that. */
  readonly misfit: number;
}

/** Fewer steps than this say too little to start with. */
export const fewestSteps = 2;

/** A frame on the photo and what she says it holds; null: not used. */
export interface DraftPatch {
  readonly frame: PatchFrame;
  readonly is: PatchMeaning | null;
}

/** By the paint measured: kept, so that a reload loses no frame. */
export type MeasureDrafts = Readonly<Record<string, readonly DraftPatch[]>>;

export const mostSteps = 6;

/** Step 1 is the strongest, each further one twice as thin. */
export const amountOfStep = (step: number): number => 2 ** (5 - step);
export const stepOfAmount = (amount: number): number => 5 - Math.log2(amount);

/** Lab distance beyond which a frame lies on more than one colour. */
const mixedSpread = 8;

/**
 * How many frames stand in the first row: each further to the right than the one before, and not
 * below it.
 */
function firstRow(frames: readonly PatchFrame[]): number {
  const next = frames.findIndex((frame, n) => {
    const before = frames[n - 1];
    return before && (frame.left <= before.left || frame.top > before.top + 0.8 * before.height);
  });
  return next < 0 ? frames.length : next;
}

/**
 * What frames found on a photo probably hold: the first row is the ladder, painted one step after
 * the other, from the end that lies further from bare paper.
 */
export function proposedDraft(found: readonly FramedColour[]): DraftPatch[] {
  const row = Math.min(mostSteps, firstRow(found.map(({ frame }) => frame)));
  const strength = ({ lab: [l, a, b] }: FramedColour): number => Math.hypot(95 - l, a, b);
  const [first, last] = [found[0], found[row - 1]];
  const backward = first && last && strength(first) < strength(last);
  return found.map(({ frame }, n) => {
    const step = backward ? row - n : n + 1;
    return { frame, is: n < row ? { kind: 'step', amount: amountOfStep(step) } : null };
  });
}

/** The patches that count, as measured. `found` is by frame, like the draft. */
export const draftPatches = (
  draft: readonly DraftPatch[],
  found: readonly FramedColour[],
): PaintPatch[] =>
  draft.flatMap(({ is }, n) => {
    const lab = found[n]?.lab;
    return is && lab ? [{ lab, is }] : [];
  });

/** A sentence where frames lie half on something else; null where each lies on one colour. */
export function mixedFrames(
  draft: readonly DraftPatch[],
  found: readonly FramedColour[],
): string | null {
  const numbers = found.flatMap(({ spread }, n) =>
    spread > mixedSpread && draft[n]?.is ? [n + 1] : [],
  );
  if (numbers.length === 0) return null;
  return numbers.length === 1
    ? `Frame ${numbers[0]} lies on more than one colour: move it to the middle of its patch, or make it smaller.`
    : `Frames ${numbers.join(', ')} lie on more than one colour: move each to the middle of its patch, or make it smaller.`;
}
