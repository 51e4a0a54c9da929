import type { Range } from '../../core/colour/lab.ts';
import type { HistoryRow } from '../../core/session/drying-history.ts';
import type { StepRecord } from '../../core/session/session-record.ts';
import { measuredMinutes, minutesInWords } from '../../core/words/minutes.ts';
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
    <section class="stack">
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
                  {measuredMinutes(real)}
                  <HistoryBar reckoned={reckoned} real={real} />
                </td>
              </tr>
            ))}
        </tbody>
      </table>
    </section>
  );
}

/** The range as a bar and the real time as a stroke, from nothing to the larger of the two. */
function HistoryBar({ reckoned, real }: { reckoned: Range; real: number }) {
  const most = Math.max(reckoned[1], real) || 1;
  const toPercent = (minutes: number): number => (100 * minutes) / most;
  return (
    <svg class={styles.bar} viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
      <path class={styles.line} d="M0 4H100" />
      <rect
        class={styles.range}
        x={toPercent(reckoned[0])}
        y="1"
        width={Math.max(1, toPercent(reckoned[1]) - toPercent(reckoned[0]))}
        height="6"
      />
      <rect class={styles.real} x={Math.max(0, toPercent(real) - 2)} y="0" width="2" height="8" />
    </svg>
  );
}

const saidMinutes = (minutes: number | null): string =>
  minutes === null ? 'not told' : measuredMinutes(minutes);

/** What was reckoned at brush down and what she then saw, wash by wash. */
export function DryingTable({ steps }: { steps: readonly StepRecord[] }) {
  const washes = steps.filter(({ reckonedDryMinutes }) => reckonedDryMinutes !== null);
  if (washes.length === 0) return null;
  return (
    <section class="stack">
      <h2 class={styles.heading}>How it dried</h2>
      <table class={styles.table}>
        <thead>
          <tr>
            <th scope="col">Wash</th>
            <th scope="col">Shine gone</th>
            <th scope="col">Bone dry</th>
          </tr>
        </thead>
        <tbody>
          {washes.map((step) => (
            <tr key={step.key}>
              <th scope="row">{step.title}</th>
              <td data-name="Shine gone">
                {saidMinutes(step.shineMinutes)}
                <br />
                <small>reckoned {minutesInWords(step.reckonedShineMinutes ?? [0, 0])}</small>
              </td>
              <td data-name="Bone dry">
                {saidMinutes(step.dryMinutes)}
                <br />
                <small>reckoned {minutesInWords(step.reckonedDryMinutes ?? [0, 0])}</small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
