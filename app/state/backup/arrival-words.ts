import { arrivalInWords } from '../../core/words/copies.ts';
import type {
  Arrival,
  ArrivingPainting,
  CheckedBackup,
} from '../../storage/backup/restore-backup.ts';

const order: readonly Arrival[] = [
  ...(['new', 'brought back', 'later in the copy', 'later here', 'completed', 'same'] as const),
];

/** What would happen, a sentence for each kind of painting. */
export const arrivalsInWords = (paintings: readonly ArrivingPainting[]): readonly string[] =>
  order.flatMap((kind) => {
    const its = paintings.filter(({ arrival }) => arrival === kind);
    return its.length > 0
      ? [
          arrivalInWords(
            kind,
            its.map(({ title }) => title),
          ),
        ]
      : [];
  });

/** Whether there is anything to bring. */
export const bringsNothing = ({ paintings, box }: CheckedBackup): boolean =>
  box !== 'joins' && paintings.every(({ arrival }) => arrival === 'same');
