import type { Edge } from '../../../app/model/edge.ts';
import { edgeLimits } from '../../../app/model/edge.ts';
import type { Border } from '../../../app/model/reading.ts';
import type { Slot } from '../../../app/model/slot.ts';

/**
 * From these shares on an edge she loses moves a whole value: of the border between its two sides, and of all
 * that bounds the lighter one (own figures). Less of it, and only the colour is carried across where they meet.
 */
const enoughOfBorder = 0.5;
const enoughOfSide = 0.25;

interface Sides {
  readonly a: number;
  readonly b: number;
  readonly lengthMm: number;
}

/** Length of what she loses, by the pair of slots it parts. */
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
export function lostSidesTogether(
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
    const side = next[lighter] as Slot;
    const wanted = Math.min(one.target[0], two.target[0]) + edgeLimits.lost;
    const [lightness, ...hue] = side.target;
    const darkened = Math.min(lightness, Math.max(wanted, floorOf(next, side)));
    next[lighter] = { ...side, target: [darkened, ...hue] };
  }
  return next;
}
