import type { Lab } from '../../colour/lab.ts';
import type { ColourWish, PlanWishes } from '../../decisions/plan-wishes.ts';
import { inWishedColours, paintOfFamilies } from '../../decisions/wished-colours.ts';
import { tabulatedShares } from '../../limits.ts';
import { colourOfWashes, defaultPaperLab } from '../../paint/colour-of-washes.ts';
import { coatOf, type Paint } from '../../paint/paint.ts';
import { type Edge, edgeLimits } from '../../reading/edges/edge.ts';
import { isMostlyLost, parted } from '../../reading/edges/slot-borders.ts';
import type { Band, Border, Family, Reading } from '../../reading/reading.ts';
import type { Slot } from '../../reading/slot.ts';

/** The one passage of a sheet without a subject; so ground and subject are called where they are painted as one. */
const wholeSheet = 'sheet';

/** The number of the band a lightness lies in. */
const bandAt = (bands: readonly Band[], lightness: number): number =>
  bands.find(({ from }) => lightness >= from)?.band ?? bands.length;

/**
 * The slots as they are solved: ground and subject as one passage where she wants them together, or where she
 * leaves it open and their line is mostly lost (R18: a lost border is painted across while wet); the picture's values
 * are then the subject's too. Else, and in number and order always, those of the reading.
 */
export function mergePassages(
  reading: Pick<Reading, 'bands' | 'borders' | 'slots' | 'subjectBands'>,
  wish: PlanWishes['passages'],
): readonly Slot[] {
  const { bands, slots, subjectBands } = reading;
  const together = wish === undefined ? isMostlyLost(reading) : wish === 'together';
  if (!together || !parted.every((name) => slots.some(({ passage }) => passage === name))) {
    return slots;
  }
  return slots.map((slot) => ({
    ...slot,
    passage: wholeSheet,
    ...(subjectBands && { band: bandAt(bands, slot.lab[0]) }),
  }));
}

/**
 * From these shares on an edge she loses moves a whole value: of the border between its two sides, and of all
 * that bounds the lighter one (own). Less of it, and only the colour is carried across where they meet.
 */
const enoughOfBorder = 0.5;
const enoughOfSide = 0.25;

interface Sides {
  readonly a: number;
  readonly b: number;
  readonly lengthMm: number;
}

/** Length of the edges she loses, by the pair of slots on either side. */
function lostByPair(edges: readonly Edge[]): Sides[] {
  const pairs = new Map<string, Sides>();
  for (const { a, b, wish, lengthMm } of edges) {
    if (wish !== 'lose') continue;
    const pair = `${a}/${b}`;
    pairs.set(pair, { a, b, lengthMm: lengthMm + (pairs.get(pair)?.lengthMm ?? 0) });
  }
  return [...pairs.values()].sort((one, other) => other.lengthMm - one.lengthMm);
}

const boundsOf = (borders: readonly Border[], slot: number): number =>
  borders.reduce((sum, { a, b, lengthMm }) => (a === slot || b === slot ? sum + lengthMm : sum), 0);

/** The lightest target of the next darker shapes of its own colour: it must stay lighter than those. */
function floorOf(slots: readonly Slot[], { passage, family, band }: Slot): number {
  return slots.reduce((floor, slot) => {
    const isDarker = slot.passage === passage && slot.family === family && slot.band > band;
    return isDarker && !slot.reserve ? Math.max(floor, slot.target[0]) : floor;
  }, 0);
}

/**
 * Targets with the two sides of every edge she loses within 4 L* of each other: the lighter side is darkened
 * (usually the subject's shadow side into a dark ground), as far as its own colour's next value lets it. Whites
 * stay. Common practice, no source.
 */
export function mergeTargetsAcrossLostEdges(
  slots: readonly Slot[],
  {
    edges = [],
    borders,
  }: { readonly edges?: readonly Edge[]; readonly borders: readonly Border[] },
): readonly Slot[] {
  const next = [...slots];
  for (const { a, b, lengthMm } of lostByPair(edges)) {
    const [one, two] = [next[a], next[b]];
    const border = borders.find((each) => each.a === a && each.b === b);
    if (!one || !two || !border || one.reserve || two.reserve) continue;
    const lighter = one.target[0] > two.target[0] ? a : b;
    const enough =
      lengthMm >= enoughOfBorder * border.lengthMm &&
      lengthMm >= enoughOfSide * boundsOf(borders, lighter);
    if (!enough) continue;
    const side = next[lighter];
    const wanted = Math.min(one.target[0], two.target[0]) + edgeLimits.lost;
    const [lightness, ...hue] = side.target;
    const darkened = Math.min(lightness, Math.max(wanted, floorOf(next, side)));
    next[lighter] = { ...side, target: [darkened, ...hue] };
  }
  return next;
}

/** The paper, then dry colours of one paint over it from a thin glaze to a full coat. */
const ladderOf = (paint: Paint): Lab[] => [
  defaultPaperLab,
  ...tabulatedShares.map((share) =>
    colourOfWashes([{ paints: [paint], parts: [1], load: share * coatOf(paint) }]),
  ),
];

/**
 * Slots with targets in the colours she wants: a* and b* of the paint chosen for the family (or of the one
 * paint) at the target's own lightness; lightness and reserves stay. The very slots where nothing is wished.
 */
export function wishedColours(
  slots: readonly Slot[],
  families: readonly Family[],
  wish: ColourWish | undefined,
  known: readonly Paint[],
): readonly Slot[] {
  const paints = paintOfFamilies(wish, families);
  if (paints.size === 0) return slots;
  const ladders = new Map<string, Lab[]>();
  for (const id of new Set(paints.values())) {
    const paint = known.find((each) => each.id === id);
    if (paint) ladders.set(id, ladderOf(paint));
  }
  const colours = inWishedColours(
    slots.map(({ family, target }) => ({ family, colour: target })),
    paints,
    (paint) => ladders.get(paint),
  );
  return slots.map((slot, i) => (slot.reserve ? slot : { ...slot, target: colours[i] }));
}
