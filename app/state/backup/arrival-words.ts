import { joinWords } from '../../core/words/numbers.ts';
import type {
  Arrival,
  ArrivingPainting,
  CheckedBackup,
} from '../../storage/backup/restore-backup.ts';

/** What happens to paintings of a kind when a copy is brought back beside what is here. */
const words: Readonly<Record<Arrival, (titles: string, several: boolean) => string>> = {
  new: (titles, several) => `${titles}: not here yet, ${several ? 'come' : 'comes'} back.`,
  'brought back': (titles, several) =>
    `${titles}: taken away here, ${several ? 'come' : 'comes'} back.`,
  completed: (titles) => `${titles}: here, and what is missing of the record is added.`,
  'later in the copy': (titles) =>
    `${titles}: changed later in the copy than here. What is here gives way to it; all sessions stay.`,
  'later here': (titles, several) =>
    `${titles}: changed later here than in the copy. ${several ? 'They stay' : 'It stays'} as here; sessions that are missing are added.`,
  same: (titles) => `${titles}: here already, the same.`,
};

const order: readonly Arrival[] = [
  ...(['new', 'brought back', 'later in the copy', 'later here', 'completed', 'same'] as const),
];

/** More titles than this are counted instead (own). */
const mostTitles = 6;

function titlesInWords(paintings: readonly ArrivingPainting[]): string {
  const first = paintings.slice(0, mostTitles).map(({ title }) => title);
  const more = paintings.length - first.length;
  return joinWords(more > 0 ? [...first, `${more} more`] : first);
}

/** What would happen, a sentence for each kind of painting. */
export const arrivalsInWords = (paintings: readonly ArrivingPainting[]): readonly string[] =>
  order.flatMap((kind) => {
    const its = paintings.filter(({ arrival }) => arrival === kind);
    return its.length > 0 ? [words[kind](titlesInWords(its), its.length > 1)] : [];
  });

/** Whether there is anything to bring. */
export const bringsNothing = ({ paintings, box }: CheckedBackup): boolean =>
  box !== 'joins' && paintings.every(({ arrival }) => arrival === 'same');
