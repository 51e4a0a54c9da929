import type { OwnBox } from './own-box.ts';

/**
 * Two boxes of hers as one: what she owns of either, and every paint of her own in its latest form. What she took out
 * here stays out; what scraps told counts once.
 */
export function mergeBoxes(here: OwnBox, arriving: OwnBox): OwnBox {
  const lastHere = new Map<string, number>();
  for (const { id, revision } of here.paints)
    lastHere.set(id, Math.max(revision, lastHere.get(id) ?? 0));
  const later = arriving.paints.filter(({ id, revision }) => revision > (lastHere.get(id) ?? -1));
  const lessons = new Map(
    [...(arriving.strengthLessons ?? []), ...(here.strengthLessons ?? [])].map((lesson) => [
      `${lesson.event} ${lesson.paint}`,
      lesson,
    ]),
  );
  const known = new Set([...lastHere.keys(), ...here.gone]);
  return {
    ...here,
    owned: ownedOf(here, arriving),
    paints: [...here.paints, ...later],
    gone: [...here.gone, ...arriving.gone.filter((id) => !known.has(id))],
    ...(lessons.size > 0 && {
      strengthLessons: [...lessons.values()].sort((a, b) => a.at - b.at),
    }),
  };
}

function ownedOf(here: OwnBox, arriving: OwnBox): OwnBox['owned'] {
  if (!here.owned || !arriving.owned) return here.owned ?? arriving.owned;
  return [...new Set([...here.owned, ...arriving.owned])];
}
