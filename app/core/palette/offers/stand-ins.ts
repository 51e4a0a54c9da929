import { colourDifference } from '../../colour/ciede2000.ts';
import type { Lab } from '../../colour/lab.ts';
import { valueReachedWithin } from '../../limits.ts';
import { hueAtLightness } from '../../paint/hue-at-lightness.ts';
import { isWhiteOrBlack, type Paint } from '../../paint/paint.ts';
import { knownPaints, paintCard } from '../../paint/paint-box.ts';
import type { StrengthCorrection } from '../../paint/strength-corrections.ts';
import { ownedAmong } from '../paints-allowed.ts';

/** A shift in hue or strength of colour, and in how dark it gets. */
export interface PaintShift {
  readonly hue: 'redder' | 'yellower' | 'greener' | 'bluer' | 'brighter' | 'duller' | null;
  readonly depth: 'darker' | 'lighter' | null;
}

/** How a paint of hers stands in for one of a plan, both by name; or of which kind she has none. */
export type StandInTold =
  | { readonly theirs: string; readonly lacks: 'white' | 'black' }
  | {
      readonly theirs: string;
      readonly yours: string;
      /** Of the same pigment; almost the same; a little, clearly otherwise; nothing near. */
      readonly near: 'same' | 'almost' | 'little' | 'clearly' | 'far';
      readonly shift: PaintShift;
    };

/** A paint of hers in the place of one that a plan was made with. */
export interface StandIn {
  /** Ids: of the plan's paint, and of hers. The same where she owns it. */
  readonly theirs: string;
  /** Null for a white or a black where she has none: it is left out. */
  readonly yours: string | null;
  /** CIEDE2000 at equal lightness, mean from the palest tint to the masstone; 0 where it is left out. */
  readonly difference: number;
  /** How hers differs; null where it is the same paint. */
  readonly told: StandInTold | null;
}

/** What she has to choose from: ids of her box, left out before she has ticked any; her own paints; what scraps told. */
interface Hers {
  readonly box?: readonly string[];
  readonly ownPaints?: readonly Paint[];
  readonly strengths?: readonly StrengthCorrection[];
}

interface Laddered {
  readonly paint: Paint;
  /** Dry colours from the palest tint to the masstone. */
  readonly ladder: readonly Lab[];
  readonly darkest: number;
}

function laddered(paint: Paint): Laddered {
  const { ladder } = paintCard(paint);
  return { paint, ladder, darkest: Math.min(...ladder.map(([lightness]) => lightness)) };
}

/** What a paint looks like at that lightness, or as near to it as it gets. */
const lookAt = ({ ladder, darkest }: Laddered, lightness: number): Lab => [
  Math.max(lightness, darkest),
  ...hueAtLightness(ladder, lightness),
];

const differenceBetween = (theirs: Laddered, yours: Laddered): number =>
  theirs.ladder.reduce(
    (sum, colour) => sum + colourDifference(colour, lookAt(yours, colour[0])),
    0,
  ) / theirs.ladder.length;

const samePigments = (one: Paint, other: Paint): boolean =>
  one.ci.length > 0 &&
  one.ci.length === other.ci.length &&
  one.ci.every((name) => other.ci.includes(name));

// All figures of this file without another source: own.
/** A paint that already stands in for another is taken only where it is so much nearer, CIEDE2000. */
const onceMore = 5;
/** One of the same pigments is taken though it is so much further off: it behaves alike. */
const alike = 3;
/** Up to so much, CIEDE2000, it looks almost the same, differs a little, clearly; beyond there is nothing near. */
const [almost, little, clearly] = [4, 10, 22];
/** Shifts in a*, b* shorter than this go unsaid. */
const leastShift = 2.5;

/** Hue angles in a*, b*, degrees, about where each looks pure (from memory). */
const hues: readonly (readonly [degrees: number, word: PaintShift['hue']])[] = [
  [25, 'redder'],
  [90, 'yellower'],
  [160, 'greener'],
  [260, 'bluer'],
];

const turnBetween = (one: number, other: number): number => {
  const turn = Math.abs(one - other) % 360;
  return Math.min(turn, 360 - turn);
};

/** How hers is shifted, as far as it tells. */
function shiftOf(theirs: Laddered, yours: Laddered): PaintShift {
  const steps = theirs.ladder.map((colour) => [colour, lookAt(yours, colour[0])] as const);
  const mean = (of: (one: Lab, other: Lab) => number): number =>
    steps.reduce((sum, [one, other]) => sum + of(one, other), 0) / steps.length;
  const [da, db] = [
    mean((one, other) => other[1] - one[1]),
    mean((one, other) => other[2] - one[2]),
  ];
  const chroma = mean((one, other) => Math.hypot(other[1], other[2]) - Math.hypot(one[1], one[2]));
  const shift = Math.hypot(da, db);
  const angle = (Math.atan2(db, da) * 180) / Math.PI;
  const [nearest] = [...hues].sort((a, b) => turnBetween(a[0], angle) - turnBetween(b[0], angle));
  const isInHue = shift ** 2 > 2 * chroma ** 2;
  const hue = shift < leastShift ? null : isInHue ? nearest[1] : chroma > 0 ? 'brighter' : 'duller';
  const deeper = theirs.darkest - yours.darkest;
  const depth = Math.abs(deeper) < valueReachedWithin ? null : deeper > 0 ? 'darker' : 'lighter';
  return { hue, depth };
}

function toldOf(theirs: Laddered, yours: Laddered, difference: number): StandInTold | null {
  if (theirs.paint.id === yours.paint.id) return null;
  const near =
    difference < almost
      ? samePigments(theirs.paint, yours.paint)
        ? 'same'
        : 'almost'
      : difference < little
        ? 'little'
        : difference < clearly
          ? 'clearly'
          : 'far';
  return {
    theirs: theirs.paint.name,
    yours: yours.paint.name,
    near,
    shift: shiftOf(theirs, yours),
  };
}

/** 'white', 'black', or a colour. */
function kindOf({ ci }: Paint): 'white' | 'black' | 'colour' {
  if (!isWhiteOrBlack(ci)) return 'colour';
  return ci.every((name) => name.startsWith('PW')) ? 'white' : 'black';
}

const priceOf = (wanted: Laddered, { paint }: Laddered, taken: ReadonlySet<string>): number =>
  (taken.has(paint.id) ? onceMore : 0) - (samePigments(paint, wanted.paint) ? alike : 0);

const leftOut = ({ id, name }: Paint, lacks: 'white' | 'black'): StandIn => ({
  theirs: id,
  yours: null,
  difference: 0,
  told: { theirs: name, lacks },
});

/**
 * For every paint of a plan the one of hers that comes nearest over all strengths: itself where she owns it, one of
 * the same pigments a little before others; two paints get two of hers unless the second is much further off. Whites
 * and blacks stand in for their like only. In the order given; none where she has no paint.
 */
export function standIns(theirs: readonly Paint[], hers: Hers): StandIn[] {
  const known = knownPaints(hers.ownPaints, hers.strengths);
  const owned = ownedAmong(known, hers.box).map(laddered);
  const taken = new Set<string>(
    theirs.flatMap(({ id }) => (owned.some(({ paint }) => paint.id === id) ? [id] : [])),
  );
  return theirs.map(laddered).flatMap((wanted): StandIn[] => {
    const itself = owned.filter(({ paint }) => paint.id === wanted.paint.id);
    const kind = kindOf(wanted.paint);
    const likes = owned.filter(({ paint }) => kindOf(paint) === kind);
    const [best] = (itself.length > 0 ? itself : likes)
      .map((yours) => ({ yours, difference: differenceBetween(wanted, yours) }))
      .map((each) => ({ ...each, price: each.difference + priceOf(wanted, each.yours, taken) }))
      .sort((one, other) => one.price - other.price);
    if (!best) return owned.length > 0 && kind !== 'colour' ? [leftOut(wanted.paint, kind)] : [];
    const { yours, difference } = best;
    taken.add(yours.paint.id);
    const told = toldOf(wanted, yours, difference);
    return [{ theirs: wanted.paint.id, yours: yours.paint.id, difference, told }];
  });
}
