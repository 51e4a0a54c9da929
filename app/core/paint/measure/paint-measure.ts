import { type Lab, xyzOfLab } from '../../colour/lab.ts';
import type { HueGroup } from '../list-paints.ts';
import type { SureWhy } from '../paint.ts';
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
  /** False where its frame does not lie on one colour: it is heeded less. */
  readonly even: boolean;
}

/** What a photo of her patches says of a paint. */
export interface PaintMeasure {
  /** K and S per unit load, 36 samples, as in `Paint`. */
  readonly K: readonly number[];
  readonly S: readonly number[];
  /** 0..1, and a sentence for the painter with what would help. */
  readonly sure: number;
  readonly why: SureWhy;
  /** Colour of every patch as the paint found would have it, in the order given. */
  readonly expected: readonly Lab[];
  /** Mean CIEDE2000 between the patches and that. */
  readonly misfit: number;
  /** CIEDE2000 its mixes are expected to be off, apart from how strong the tube is. */
  readonly mixError: number;
  /** Loads per ml of tube paint, and load of its masstone, as the built-in paint of that pigment has them. */
  readonly strength: number;
  readonly mostLoad: number;
  /** What asks whether it is the right paint, where its hue is not that pigment's; null where it is. */
  readonly question: OtherHue | null;
}

/** A paint that looks of one hue, and the one it is called after of another, or of another kind of the same. */
export interface OtherHue {
  /** Name and Colour Index names. */
  readonly called: readonly string[];
  readonly looks: HueGroup;
  readonly is: HueGroup;
}

/** What she should look at again: a ladder named from its wrong end, or frames, by number, that are not on one colour. */
export type DraftCaution =
  | { readonly caution: 'backward' }
  | { readonly caution: 'slope' | 'two colours'; readonly frames: readonly number[] };

/** From this on she is told that it is quite sure. */
export const quiteSure = 0.7;

/** By its Colour Index names: it scatters far more than other paints, and shows nothing on white paper. */
export const isWhite = (ci: readonly string[]): boolean => ci.some((name) => name.startsWith('PW'));

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

/**
 * How deep a wash is: how much light it takes away, over the whole spectrum. Unlike the distance from white in Lab it
 * grows with every further coat, also of a yellow-green that is strong when pale and dull when deep.
 */
export const depthOf = (lab: Lab): number =>
  xyzOfLab(lab).reduce((sum, share) => sum - Math.log(Math.max(1e-3, share)), 0);

/** How a list of depths runs: above 0 where it grows. */
const trendOf = (depths: readonly number[]): number =>
  depths.reduce((sum, depth, n) => sum + depth * (n - (depths.length - 1) / 2), 0);

const isOverLine = (is: PatchMeaning | null): boolean =>
  is?.kind === 'black' || is?.kind === 'over-black';

/** What a frame that was found holds of a black line; null where it lies on paper. */
function lineMeaning({ ground }: FramedColour, was: PatchMeaning | null): PatchMeaning | null {
  if (ground === 'bare line') return { kind: 'black' };
  if (ground === 'line') return { kind: 'over-black', amount: amountOfStep(2) };
  return isOverLine(was) ? was : null;
}

/**
 * Places of the frames on paper by rows, in the order of the list: each frame of a row lies further to the right than
 * the one before, and not below it.
 */
export function rowsOfFrames(draft: readonly DraftPatch[]): number[][] {
  const rows: number[][] = [];
  let before: PatchFrame | null = null;
  for (const [n, { frame, is }] of draft.entries()) {
    if (isOverLine(is)) continue;
    const follows =
      before && frame.left > before.left && frame.top <= before.top + 0.8 * before.height;
    if (follows) rows[rows.length - 1].push(n);
    else rows.push([n]);
    before = frame;
  }
  return rows;
}

/**
 * What frames found on a photo probably hold: a row is the ladder, painted one step after the other, from the end that
 * is deeper: that with the most frames, or the `row` she names. What lies over a black line is as strong as the step
 * that looks like its part on paper. `before`: what she said of the frames until now.
 */
export function proposedDraft(
  found: readonly FramedColour[],
  before: readonly DraftPatch[] = [],
  row?: number,
): DraftPatch[] {
  const draft = found.map((each, n): DraftPatch => {
    return { frame: each.frame, is: lineMeaning(each, before[n]?.is ?? null) };
  });
  const rows = rowsOfFrames(draft);
  const longest = rows.findIndex(({ length }) => rows.every((other) => length >= other.length));
  const ladder = (rows[row ?? longest] ?? []).slice(0, mostSteps);
  const depths = ladder.map((n) => depthOf(found[n].lab));
  const backward = trendOf(depths) > 0;
  const amounts = ladder.map((_, n) => amountOfStep(backward ? ladder.length - n : n + 1));
  const amountLike = (lab: Lab): number => {
    const off = depths.map((depth) => Math.abs(depth - depthOf(lab)));
    return amounts[off.indexOf(Math.min(...off))];
  };
  return draft.map(({ frame, is }, n) => {
    const place = ladder.indexOf(n);
    if (place >= 0) return { frame, is: { kind: 'step', amount: amounts[place] } };
    const isOfLine = found[n + 1]?.ground === 'line';
    if (ladder.length > 0 && isOfLine) {
      return { frame, is: { kind: 'step', amount: amountLike(found[n].lab) } };
    }
    if (ladder.length > 0 && is?.kind === 'over-black' && found[n].ground === 'line') {
      return { frame, is: { kind: 'over-black', amount: amountLike(found[n - 1].lab) } };
    }
    return { frame, is };
  });
}

/** The ladder named from its other end. */
export function withLadderTurned(draft: readonly DraftPatch[]): DraftPatch[] {
  const steps = draft.flatMap(({ is }) => (is && 'amount' in is ? [is.amount] : []));
  const ends = Math.max(...steps) * Math.min(...steps);
  return draft.map(({ frame, is }) => ({
    frame,
    is: is && 'amount' in is ? { ...is, amount: ends / is.amount } : is,
  }));
}

/** The patches that count, as measured. `found` is by frame, like the draft. */
export const draftPatches = (
  draft: readonly DraftPatch[],
  found: readonly FramedColour[],
): PaintPatch[] =>
  draft.flatMap(({ is }, n) => {
    const framed = found[n];
    return is && framed ? [{ lab: framed.lab, is, even: framed.evenness === 'even' }] : [];
  });

/** Depths of two washes closer than this may lie either way round (own). */
const sameDepth = 0.15;

/** Whether step 1 is paler than the last one; else the ladder is named as it is painted. */
function isBackward(patches: readonly PaintPatch[]): boolean {
  const depths = patches
    .flatMap(({ lab, is }) =>
      is.kind === 'step' ? [{ amount: is.amount, depth: depthOf(lab) }] : [],
    )
    .sort((one, two) => one.amount - two.amount)
    .map(({ depth }) => depth);
  const span = Math.max(...depths) - Math.min(...depths);
  return depths.length >= fewestSteps && span >= sameDepth && trendOf(depths) < 0;
}

function unevenFrames(
  draft: readonly DraftPatch[],
  found: readonly FramedColour[],
  evenness: 'slope' | 'two colours',
): DraftCaution[] {
  const frames = found.flatMap((each, n) =>
    each.evenness === evenness && draft[n]?.is ? [n + 1] : [],
  );
  return frames.length > 0 ? [{ caution: evenness, frames }] : [];
}

/** What she should look at again. */
export const draftCautions = (
  draft: readonly DraftPatch[],
  found: readonly FramedColour[],
  ci: readonly string[],
): DraftCaution[] => [
  ...(!isWhite(ci) && isBackward(draftPatches(draft, found))
    ? [{ caution: 'backward' } as const]
    : []),
  ...unevenFrames(draft, found, 'two colours'),
  ...unevenFrames(draft, found, 'slope'),
];
