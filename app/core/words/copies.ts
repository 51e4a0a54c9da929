import { joinWords, openWithCount, pluralize } from './numbers.ts';

/** That a copy is worth keeping: so many paintings changed since the last one; null: there is none. */
export const copyReminder = (changed: number | null): string =>
  changed === null
    ? 'Your paintings are on this device only.'
    : `${openWithCount(changed, 'painting')} ${pluralize(changed, 'has', 'have')} changed since you last kept a copy.`;

const arrivals = {
  new: (titles: string, come: string) => `${titles}: not here yet, ${come} back.`,
  'brought back': (titles: string, come: string) => `${titles}: taken away here, ${come} back.`,
  completed: (titles: string) => `${titles}: here, and what is missing of the record is added.`,
  'later in the copy': (titles: string) =>
    `${titles}: changed later in the copy than here. What is here gives way to it; all sessions stay.`,
  'later here': (titles: string, _: string, theyStay: string) =>
    `${titles}: changed later here than in the copy. ${theyStay} as here; sessions that are missing are added.`,
  same: (titles: string) => `${titles}: here already, the same.`,
} as const;

/** More titles than this are counted instead (own). */
const mostTitles = 6;

function titlesInWords(titles: readonly string[]): string {
  const more = titles.length - mostTitles;
  return joinWords(more > 0 ? [...titles.slice(0, mostTitles), `${more} more`] : titles);
}

/** What happens to paintings, by their titles, when a copy is brought back beside what is here. */
export const arrivalInWords = (arrival: keyof typeof arrivals, titles: readonly string[]): string =>
  arrivals[arrival](
    titlesInWords(titles),
    pluralize(titles.length, 'comes', 'come'),
    pluralize(titles.length, 'It stays', 'They stay'),
  );
