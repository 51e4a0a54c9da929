import { colourDifference } from '../colour/ciede2000.ts';
import type { Lab } from '../colour/lab.ts';
import { valueOfLightness } from '../colour/lightness.ts';
import type { Family } from '../reading/reading.ts';
import { type ColourWay, differencesInWords } from '../words/plan/beside.ts';
import type { ColourName } from '../words/plan/names.ts';
import type { WashPlan } from './plan.ts';

type Told = Pick<WashPlan, 'slots' | 'steps' | 'mixes'>;

// All figures of this file: own.
/** Colours that differ by less, CIEDE2000, are taken for the same on two sheets. */
const seenFrom = 4;
/** Munsell values: darks that differ by less look the same. */
const darkerFrom = 0.25;

/** Slots by what they are, as two plans of one reading may list them otherwise: several may be alike. */
function namedSlots(slots: WashPlan['slots']): string[] {
  const seen = new Map<string, number>();
  return slots.map(({ passage, band, family, reserve }) => {
    const name = `${passage} ${band} ${family} ${reserve}`;
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return `${name} ${count}`;
  });
}

const lastSheet = ({ steps }: Told): readonly Lab[] => steps.at(-1)?.after ?? [];

const washesOf = ({ mixes }: Told): number =>
  Math.max(0, ...mixes.filter(({ parts }) => parts.length > 0).map(({ wash }) => wash));

/** Mean dry colour of what is painted of a family on both last sheets, by area; null where nothing is. */
function coloursOf(family: number, theirs: Told, yours: Told): readonly [Lab, Lab] | null {
  const hers = new Map(namedSlots(yours.slots).map((name, i) => [name, lastSheet(yours)[i]]));
  const names = namedSlots(theirs.slots);
  let area = 0;
  const [one, other]: [number, number, number][] = [
    [0, 0, 0],
    [0, 0, 0],
  ];
  for (const [i, slot] of theirs.slots.entries()) {
    const [mine, own] = [lastSheet(theirs)[i], hers.get(names[i])];
    if (slot.family !== family || slot.reserve || !mine || !own) continue;
    area += slot.share;
    for (let n = 0; n < 3; n++) {
      one[n] += slot.share * mine[n];
      other[n] += slot.share * own[n];
    }
  }
  const mean = (sum: readonly number[]): Lab => [sum[0] / area, sum[1] / area, sum[2] / area];
  return area > 0 ? [mean(one), mean(other)] : null;
}

/** Of two colours that differ: 'duller', 'warmer' and so on, and 'lighter' or 'darker' where that tells more. */
function wayOf(one: Lab, other: Lab): ColourWay {
  const lighter = other[0] - one[0];
  const [da, db] = [other[1] - one[1], other[2] - one[2]];
  const chroma = Math.hypot(other[1], other[2]) - Math.hypot(one[1], one[2]);
  if (Math.abs(lighter) > Math.hypot(da, db)) return lighter > 0 ? 'lighter' : 'darker';
  if (Math.hypot(da, db) < Math.SQRT2 * Math.abs(chroma)) return chroma > 0 ? 'brighter' : 'duller';
  // Warm is towards orange, 60 degrees in a*, b* (common practice, no source).
  return da * Math.cos(Math.PI / 3) + db * Math.sin(Math.PI / 3) > 0 ? 'warmer' : 'cooler';
}

const darkestOf = (plan: Told): number =>
  valueOfLightness(
    Math.min(100, ...lastSheet(plan).flatMap((lab, i) => (plan.slots[i]?.reserve ? [] : [lab[0]]))),
  );

/**
 * How the last sheet of a plan made with other paints differs from that of the plan it was made from, over the same
 * reading: a sentence each on values, on colours that are seen to differ, and on the number of washes.
 */
export function planDifferences(
  theirs: Told,
  yours: Told,
  families: readonly Pick<Family, 'id' | 'name'>[],
): string[] {
  const [dark, own] = [darkestOf(theirs), darkestOf(yours)];
  const ways = new Map<ColourWay, ColourName[]>();
  for (const { id, name } of families) {
    const found = coloursOf(id, theirs, yours);
    if (!found || colourDifference(...found) < seenFrom) continue;
    const way = wayOf(...found);
    ways.set(way, [...(ways.get(way) ?? []), name]);
  }
  return differencesInWords({
    darks: Math.abs(dark - own) < darkerFrom ? null : { theirs: dark, yours: own },
    ways,
    moreWashes: washesOf(yours) - washesOf(theirs),
  });
}
