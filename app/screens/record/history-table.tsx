import { minutesInWords } from '../../model/minutes-in-words.ts';
import type { HistoryRow } from '../../model/session/drying-history.ts';
import { HistoryBar } from './history-bar.tsx';
import styles from './record-screen.module.css';

const shown = 12;

const clockWords = { shine: 'shine gone', dry: 'bone dry' } as const;

/** Reckoned and real drying times of all sessions, the latest first: a bar for the range, a mark for the real time. */
export function HistoryTable({ rows }: { rows: readonly HistoryRow[] }) {
  if (rows.length === 0) return null;
  const within = rows.filter(
    ({ reckoned, real }) => reckoned[0] <= real && real <= reckoned[1],
  ).length;
  return (
    <section class={styles.section}>
      <h2 class={styles.heading}>Reckoned and real, all paintings</h2>
      <p>
        {within} of {rows.length} lay in the range that was said.
      </p>
      <table class={styles.table}>
        <thead>
          <tr>
            <th scope="col">Wash</th>
            <th scope="col">Reckoned</th>
            <th scope="col">Real</th>
          </tr>
        </thead>
        <tbody>
          {rows
            .slice(-shown)
            .reverse()
            .map(({ sessionId, startedAt, title, clock, reckoned, real }) => (
              <tr key={`${sessionId} ${title} ${clock}`}>
                <th scope="row">
                  {title}, {clockWords[clock]}
                  <br />
                  <small>
                    {new Date(startedAt).toLocaleDateString(undefined, { dateStyle: 'medium' })}
                  </small>
                </th>
                <td data-name="Reckoned">{minutesInWords(reckoned)}</td>
                <td data-name="Real">
                  {real < 1 ? 'under 1 min' : `${Math.round(real)} min`}
                  <HistoryBar reckoned={reckoned} real={real} />
                </td>
              </tr>
            ))}
        </tbody>
      </table>
    </section>
  );
}
