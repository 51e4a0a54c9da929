import type { Slot } from '../../reading/slot.ts';
import type { SolvedWash } from '../plan-facts.ts';
import type { WashWork } from '../steps/draft-steps.ts';

/** The mixes of a wash that paint at least one of these slots. */
const mixesOnSlots = ({ mixes }: SolvedWash, slots: readonly Slot[], indices: readonly number[]) =>
  mixes.filter(
    ({ parts, passage, family }) =>
      parts.length > 0 &&
      indices.some((i) => slots[i]?.passage === passage && slots[i]?.family === family),
  );

/** A wash over some of its slots only, with the rows and bands they need. */
export function partOfWash(
  wash: SolvedWash,
  slots: readonly Slot[],
  indices: readonly number[],
): SolvedWash {
  const own = wash.slots.filter((slot) => indices.includes(slot));
  const darkest = own.reduce((most, i) => Math.max(most, slots[i]?.band ?? 0), 0);
  const lightest = own.reduce((least, i) => Math.min(least, slots[i]?.band ?? darkest), darkest);
  const among = (bands: readonly number[]): number[] =>
    bands.filter((band) => band >= lightest && band <= darkest);
  const full = among(wash.full);
  const weak = among(wash.weak);
  return {
    wash: wash.wash,
    // Shapes that this wash only goes under still have a band to name.
    full: full.length + weak.length > 0 ? full : wash.full,
    weak,
    mixes: mixesOnSlots(wash, slots, own),
    slots: own,
    after: wash.after.filter((_, position) => indices.includes(wash.slots[position] ?? -1)),
  };
}

type Group = { readonly slots: readonly number[]; readonly share: number };

const shareOf = (slots: readonly Slot[], indices: readonly number[]): number =>
  indices.reduce((sum, i) => sum + (slots[i]?.share ?? 0), 0);

function groupsBy(
  slots: readonly Slot[],
  indices: readonly number[],
  nameOf: (slot: Slot) => number,
): Group[] {
  const groups = new Map<number, number[]>();
  for (const i of indices) {
    const slot = slots[i];
    if (slot) groups.set(nameOf(slot), [...(groups.get(nameOf(slot)) ?? []), i]);
  }
  return [...groups]
    .sort(([one], [other]) => one - other)
    .map(([, own]) => ({ slots: own, share: shareOf(slots, own) }));
}

/** Splits groups into two halves of about equal area: largest first, each to the smaller half so far. */
function halved(groups: readonly Group[]): [Group, Group] {
  const heaps: [Group, Group] = [
    { slots: [], share: 0 },
    { slots: [], share: 0 },
  ];
  for (const [n, group] of [...groups].sort((a, b) => b.share - a.share).entries()) {
    const to = n === 1 || (n > 1 && heaps[1].share < heaps[0].share) ? 1 : 0;
    heaps[to] = {
      slots: [...heaps[to].slots, ...group.slots],
      share: heaps[to].share + group.share,
    };
  }
  const [a, b] = heaps;
  return a.share >= b.share ? [a, b] : [b, a];
}

/**
 * A wash in two goes: its areas, where it has them, else of about half its area each, the larger first. Null where
 * it is one shape of one value.
 */
export function splitWash(work: WashWork, slots: readonly Slot[]): [WashWork, WashWork] | null {
  const { areas, ...plain } = work;
  const ways = areas ?? halvesOf(work.wash, slots);
  if (!ways) return null;
  const [first, second] = ways.map(
    (way): WashWork => ({
      ...plain,
      ...('technique' in way && { technique: way.technique }),
      wash: partOfWash(work.wash, slots, way.slots),
      change: 'first go',
      whole: work,
    }),
  );
  return [first, { ...second, key: `${work.key}/b`, change: 'second go' }];
}

/** Two halves of about equal area: some colours, then the others; one colour alone by its values. */
function halvesOf(wash: SolvedWash, slots: readonly Slot[]): [Group, Group] | null {
  const colours = groupsBy(slots, wash.slots, ({ family }) => family);
  const groups = colours.length > 1 ? colours : groupsBy(slots, wash.slots, ({ band }) => band);
  return groups.length < 2 ? null : halved(groups);
}

const together = (one: readonly number[], other: readonly number[]): number[] =>
  [...new Set([...one, ...other])].sort((a, b) => a - b);

/** Both washes as one: all their slots, each row once, the first wash's rows first. */
function bothWashes(one: SolvedWash, other: SolvedWash): SolvedWash {
  const rows = new Map([...one.mixes, ...other.mixes].map((mix) => [mix.id, mix]));
  const full = together(one.full, other.full);
  return {
    wash: Math.min(one.wash, other.wash),
    full,
    weak: together(one.weak, other.weak).filter((band) => !full.includes(band)),
    mixes: [...rows.values()].sort((a, b) => a.wash - b.wash),
    slots: together(one.slots, other.slots),
    after: [],
  };
}

/** Two washes of one passage painted together; two goes of one wash are that wash again. */
export function mergeWashes(one: WashWork, other: WashWork): WashWork {
  const { change: _, whole, areas: __, ...plain } = one;
  if (whole && whole === other.whole) {
    return whole.areas ? whole : { ...whole, technique: one.technique };
  }
  return { ...plain, wash: bothWashes(one.wash, other.wash), change: 'in one go' };
}
