/**
 * Figures of the trade that more than one rule or screen keeps to, by subject. A figure that one rule alone
 * uses stands beside that rule. Each has its reason; '(own)' means that this project proposes it and no
 * source gives it; R1..R21 are the rules in plan/rules/rules.md.
 */

// Values and colours of the picture.

/** L* that make one step of Munsell value: value 10 is L* 100 (ASTM D1535, rounded (own)). */
export const lightnessOfOneValue = 10;

/** From this difference on, L*, a shape shows another value than the planned one (own). */
export const otherValueFrom = 8;

/** A shape within this of its planned L* has its value: half a step (own). */
export const valueReachedWithin = 5;

/** A study has at least two values, or there is nothing to compare. */
export const fewestBands = 2;

/** A study has at most so many values: the scales of the trade with more are for judging, not for painting. */
export const mostBands = 7;

/** Colour families a picture is read in, at most: more than a palette can keep apart (own). */
export const mostFamilies = 6;

/** With a subject, each side of its line has families of its own: at most so many, some of them alike (own). */
export const familiesPerPassage = { ground: 5, subject: 4 } as const;

/** And so many in all (own). */
export const mostFamiliesWithSubject = 8;

// Shapes, lengths in mm on the sheet.

/** Smallest short side of a shape she can paint, by wash (own). */
export const smallestShapeMm = { first: 10, second: 5, darks: 2, details: 1 } as const;

/** A shape with a shorter side than this is small (common practice). */
export const smallShapeMm = 3;

/** The point of a brush can leave out nothing smaller (common practice). */
export const brushPointMm = 1;

/**
 * When small shapes join a neighbour, differences of value are compared in steps of this, L*: within a step
 * the longer border decides (own).
 */
export const joiningStep = 4;

// Whites.

/** Within this of the paper, L*, and with less than this C*, a shape is kept white (own). */
export const reserveWithin = 5;
export const reserveChroma = 8;

/** From this many small whites on nobody paints round them on wet paper: they are masked (own). */
export const manySmallWhites = 3;

// Mixes. A load is the amount of tube paint on the sheet, ml/m2; in plans made before paints had a strength it is
// counted in pale washes.

/** Whole parts of volume of one mix sum to at most this: more can not be measured by eye (own). */
export const mostParts = 8;

/** Paints in one mix, at most: a fourth makes mud (common practice). */
export const mostPaintsInMix = 3;

/** How many paints a mix may have: 1, 2 or 3. */
export const mixSizes: readonly number[] = Array.from({ length: mostPaintsInMix }, (_, n) => n + 1);

/** Added to a cost in CIEDE2000 for every paint of a mix beyond the first: two paints before three (own). */
export const costOfAnotherPaint = 0.4;

/**
 * Added to a cost in CIEDE2000 for every CIEDE2000 by which a mix is to be expected off where her paints are 15 %
 * stronger or weaker than the table's (`paint/mix-sensitivity.ts`): a steady mix before one that needs exact tubes.
 * At 0.5 six photographs keep most palettes in their copies; at 1 steadiness is bought with far colours (own).
 */
export const costOfUnsteadiness = 0.5;

/** A mix of more parts of one paint than this to one of another can't be squeezed out (own). */
export const mostToOne = 6;

/** The most that a change of hers may lay, ml of tube paint on a square metre: two full coats (own). */
export const strongestLoad = 40;

/**
 * No figure of a paint's optics that comes from a file is larger (K, S, strength, its thickest coat): a million pale
 * washes (own). Beyond, squares of them end in no colour at all.
 */
export const largestOptic = 1e6;

/**
 * A shape larger than this is washed, not set down: nothing stiffer than cream goes on it, and butter is for accents,
 * cm2 (own; that a first wash is no thicker than milk, and butter for accents, is common practice, no source).
 */
export const largestAccentCm2 = 20;

/** Shares of a full coat in half octaves, from two to the power of `from` up to it. */
const halfOctaves = (from: number): readonly number[] =>
  Array.from({ length: 1 - 2 * from }, (_, n) => 2 ** (n / 2 + from));

/** Shares of a full coat at which the search for a palette compares single washes: 1/128 to 1, 15 of them. */
export const searchShares = halfOctaves(-7);

/** Shares of it at which the layers of every mix of a palette are kept for the plan: 1/512 to 1, 19 of them. */
export const tabulatedShares = halfOctaves(-9);

// The palette.

/** Paints proposed for a picture: few paints keep it together (own). */
export const proposedPaletteSize = 5;

/** Paints of a palette, at most: no longer a limited one beyond, and the exact search takes long (own). */
export const largestPalette = 7;

// Washes and puddles.

/** Washes over each other unless she sets otherwise (R9). */
export const proposedWashes = 3;

/** Washes over each other, at most, whatever the paper (R9). */
export const mostWashes = 8;

/** Puddles at hand in one wash: while she reaches for more, one dries (own). */
export const proposedPuddles = 3;

/** Puddles in one wash, at most, where she asks for many (own). */
export const mostPuddles = 8;

/** Rounds of negative painting, at most (R20). */
export const mostNegativeRounds = 3;

// Strokes drawn over a picture.

/** A line round the subject has at least so many points: fewer enclose nothing. */
export const fewestPointsRound = 3;

// Time.

/** Milliseconds of a minute. */
export const minuteMs = 60_000;

/** Minutes an evening has at least: less is no time for one wash (own). */
export const fewestEveningMinutes = 20;

/** Minutes an evening has at most: those of a day. */
export const mostEveningMinutes = 24 * 60;

// Sentences and pictures.

/** Signs of a sentence at the easel, at most: it is read at arm's length with a wet brush in hand (own). */
export const longestPrompt = 160;

/** Long side of the raster that is worked on, px: one plane of it takes 8 MB, which a phone can bear (own). */
export const rasterLongSidePx = 1600;

/** Drops in 1 ml, and what spoons hold, ml (common practice, no source). */
export const dropsInMl = 20;
export const teaspoonMl = 5;
export const tablespoonMl = 15;
