import type { Slot } from '../../../../app/model/slot.ts';
import type { WashWork } from '../plan-work.ts';
import { partOfWash } from './part-of-wash.ts';

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

/** Two heaps of about the same area: the largest first, each to the heap that is smaller so far. */
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
 * A wash in two goes of about half its area each, the larger first: some colours, then the others. One colour
 * alone is parted by its values. Null where it is one shape of one value.
 */
export function splitWash(work: WashWork, slots: readonly Slot[]): [WashWork, WashWork] | null {
  const { wash } = work;
  const colours = groupsBy(slots, wash.slots, ({ family }) => family);
  const groups = colours.length > 1 ? colours : groupsBy(slots, wash.slots, ({ band }) => band);
  if (groups.length < 2) return null;
  const [first, second] = halved(groups);
  return [
    { ...work, wash: partOfWash(wash, slots, first.slots), change: 'first go', whole: wash },
    {
      ...work,
      key: `${work.key}/b`,
      wash: partOfWash(wash, slots, second.slots),
      change: 'second go',
      whole: wash,
    },
  ];
}
