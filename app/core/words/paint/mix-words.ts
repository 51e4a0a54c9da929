import type { Lab } from '../../colour/lab.ts';
import { valueOfLightness } from '../../colour/lightness.ts';
import { type Consistency, concentrationOf } from '../../paint/consistency.ts';
import type { Addition, Part } from '../../paint/mix.ts';
import type { Mud } from '../../paint/mud.ts';
import { type Thinning, thinningFor } from '../../paint/thinning.ts';
import { dryingShift } from '../../paint/wet-look.ts';
import { capitalize, formatCount, joinWords, pluralize, spellCount } from '../numbers.ts';

/** How much of a mix one paint is, in the words said at the palette. */
function amountWord(share: number): string {
  if (share >= 0.58) return 'mostly';
  if (share >= 0.42) return 'half';
  if (share >= 0.25) return 'some';
  return 'a touch of';
}

/**
 * A paint takes a mix over where it is at most a quarter of the volume and has at least half as much again of the
 * colour, its share of parts by strength (own).
 */
const takesOver = { volume: 0.25, colour: 1.5 } as const;

/** The paint of a mix that so little of decides that it is added last, drop by drop; null where none does. */
function paintAddedLast(
  parts: readonly Part[],
  strengthOf: (paint: string) => number,
): string | null {
  const whole = parts.reduce((sum, { parts: n }) => sum + n, 0);
  const colour = parts.reduce((sum, { parts: n, paint }) => sum + n * strengthOf(paint), 0);
  const [strongest] = [...parts].sort((a, b) => strengthOf(b.paint) - strengthOf(a.paint));
  if (!strongest || strongest.parts > takesOver.volume * whole) return null;
  const { paint } = strongest;
  return strengthOf(paint) * whole >= takesOver.colour * colour ? paint : null;
}

/**
 * 'mostly ultramarine blue, a touch of burnt sienna', shares of volume; 'equal parts of' three of which there is as
 * much of each; 'added last' of one that takes the mix over. Names and strengths, in loads per ml, are looked up by
 * paint id.
 */
export function partsInWords(
  parts: readonly Part[],
  nameOf: (paint: string) => string,
  strengthOf: (paint: string) => number = () => 1,
): string {
  const whole = parts.reduce((sum, { parts: n }) => sum + n, 0);
  if (parts.length === 1) return nameOf(parts[0]?.paint ?? '');
  if (parts.length > 2 && parts.every(({ parts: n }) => n === parts[0]?.parts)) {
    return `equal parts of ${joinWords(parts.map(({ paint }) => nameOf(paint)))}`;
  }
  const sorted = [...parts].sort((a, b) => b.parts - a.parts);
  const words = sorted.map(({ paint, parts: n }) => `${amountWord(n / whole)} ${nameOf(paint)}`);
  const last = paintAddedLast(parts, strengthOf);
  if (last) words.push(last === sorted.at(-1)?.paint ? 'added last' : `${nameOf(last)} added last`);
  return words.join(', ');
}

/** '3 : 1', in the order of the words; it never breaks over two lines. */
export const partsInNumbers = (parts: readonly Part[]): string =>
  [...parts]
    .map((part) => part.parts)
    .sort((a, b) => b - a)
    .join('\u00a0:\u00a0');

/** How a mix laid at one load, ml/m2, comes to another by water or its own paint alone. */
export function strengthInWords(load: number, wanted: number): string {
  const concentration = concentrationOf(load);
  if (wanted < load) {
    const thinning = thinningFor(concentration, wanted);
    return thinning ? thinningInWords(thinning) : 'a touch of water';
  }
  const ratio = concentrationOf(wanted) / concentration;
  if (!Number.isFinite(ratio)) return 'paint straight from the tube, no water';
  if (ratio < 1.05) return 'the same strength';
  const times = ratio < 4 ? Math.round(ratio * 4) / 4 : Math.round(ratio);
  if (times === 1) return 'a touch more of its own paint in the same water';
  return times === 2
    ? 'twice as much of its own paint in the same water'
    : `${times} times as much of its own paint in the same water`;
}

/** How much darker, in values, up to so much: before 'to', and with the value named. */
const wetSteps: readonly (readonly [upTo: number, short: string, full: string])[] = [
  [0.07, '', 'about the same'],
  [0.17, 'a touch', 'a touch darker'],
  [0.375, 'a quarter', 'a quarter of a value darker'],
  [0.625, 'half', 'half a value darker'],
  [0.875, 'three quarters', 'three quarters of a value darker'],
  [Number.POSITIVE_INFINITY, 'a whole value', 'a whole value darker'],
];

/**
 * How much darker a wash looks while wet: a range, as nobody has measured it. 'wet it looks a touch to three quarters
 * of a value darker'.
 */
export function wetLook(dry: Lab, wet: Lab): string {
  const [least, most] = dryingShift(dry, wet).map((shift) => {
    const by = valueOfLightness(dry[0]) - valueOfLightness(dry[0] - shift);
    return wetSteps.find(([upTo]) => by < upTo) ?? wetSteps[0];
  });
  const from = least === most ? '' : least[1] ? `${least[1]} to ` : 'up to ';
  return `wet it looks ${from}${most[2]}`;
}

/** 'two parts of it with one of water'. */
export const thinningInWords = ({ puddle, water }: Thinning): string =>
  `${spellCount(puddle)} ${pluralize(puddle, 'part')} of it with ${spellCount(water)} of water`;

export const consistencySign: Record<Consistency, string> = {
  tea: 'runs like water, the bottom of the well shows',
  coffee: 'runs, the bottom is hard to see',
  milk: 'moves slowly and shimmers',
  cream: 'does not run when you tilt the palette',
  butter: 'stiff, as from the tube',
};

/** The same in a sentence. */
export const mudInWords = (mud: Mud): string =>
  mud === 'colour lost'
    ? 'Mixed, these paints lose most of their colour: mud, where colour was meant. Lay one over the other dry, or add a paint nearer to the colour.'
    : `${capitalize(spellCount(mud.pigments))} pigments are in this mix: it easily goes to mud. Stir little, or leave one paint out.`;

/** What makes another mix of one: 'one part more burnt sienna to 3 parts of this mix', or water, or paint. */
export const additionInWords = (add: Addition): string =>
  add.change === 'strength'
    ? strengthInWords(add.from, add.to)
    : `one part${add.isMore ? ' more' : ''} ${add.paint} to ${formatCount(add.to, 'part')} of this mix`;
