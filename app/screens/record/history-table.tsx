import type { Range } from '../../core/colour/lab.ts';
import type { HistoryRow } from '../../core/session/drying-history.ts';
import type { StepRecord } from '../../core/session/session-record.ts';
import { dateInWords } from '../../core/words/dates.ts';
import { measuredMinutes, minutesInWords } from '../../core/words/minutes.ts';
import { words } from '../../core/words/plan/words.ts';
import styles from './record-screen.module.css';

const shown = 12;

const clockWords = { shine: 'shine gone', dry: 'bone dry' } as const;

/** Expected and actual drying times of all sessions, the latest first: a bar for the range, a mark for the real time. */
export function HistoryTable({ rows }: { rows: readonly HistoryRow[] }) {
  if (rows.length === 0) return null;
  const within = rows.filter(
    ({ reckoned, real }) => reckoned[0] <= real && real <= reckoned[1],
  ).length;
  return (
    <section class="stack">
      <p>
        {within === rows.length
          ? `All ${rows.length} dried within the expected time.`
          : `${within} of ${rows.length} dried within the expected time.`}
      </p>
      <table class={styles.table}>
        <thead>
          <tr>
            <th scope="col">Wash</th>
            <th scope="col">Expected</th>
            <th scope="col">Actual</th>
          </tr>
        </thead>
        <tbody>
          {rows
            .slice(-shown)
            .reverse()
            .map(({ sessionId, startedAt, title, clock, reckoned, real }) => (
              <tr key={`${sessionId} ${words(title)} ${clock}`}>
                <th scope="row">
                  {words(title)}, {clockWords[clock]}
                  <br />
                  <small>{dateInWords(startedAt)}</small>
                </th>
                <td data-name="Expected">{minutesInWords(reckoned)}</td>
                <td data-name="Actual">
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
  minutes === null ? 'not noted' : measuredMinutes(minutes);

/** What was reckoned at brush down and what she then saw, wash by wash. */
export function DryingTable({ steps }: { steps: readonly StepRecord[] }) {
  const washes = steps.filter(({ reckonedDryMinutes }) => reckonedDryMinutes !== null);
  if (washes.length === 0) return null;
  return (
    <section class="stack">
      <h3>How it dried</h3>
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
                <small>expected {minutesInWords(step.reckonedShineMinutes ?? [0, 0])}</small>
              </td>
              <td data-name="Bone dry">
                {saidMinutes(step.dryMinutes)}
                <br />
                <small>expected {minutesInWords(step.reckonedDryMinutes ?? [0, 0])}</small>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** A drying check is planned by how long the wash before it dries. */
function plannedWords(
  { kind, n, plannedMinutes }: StepRecord,
  steps: readonly StepRecord[],
): string {
  const wet = steps.findLast((step) => step.n < n && step.plannedDryMinutes[1] > 0);
  const planned = (kind === 'dry' && wet?.plannedDryMinutes) || plannedMinutes;
  return planned[1] > 0 ? minutesInWords(planned) : '–';
}

/** Every step: how long it was planned for, painted at and waited for. */
export function StepTable({ steps }: { steps: readonly StepRecord[] }) {
  return (
    <table class={styles.table}>
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col">Planned</th>
          <th scope="col">Painted</th>
          <th scope="col">Waited</th>
        </tr>
      </thead>
      <tbody>
        {steps.map((step) => (
          <tr key={step.key} data-done={step.done || undefined}>
            <th scope="row">
              {step.n}. {step.title}
              {!step.done && ' (not done)'}
            </th>
            <td data-name="Planned">{plannedWords(step, steps)}</td>
            <td data-name="Painted">
              {step.paintedMinutes > 0 ? measuredMinutes(step.paintedMinutes) : '–'}
            </td>
            <td data-name="Waited">
              {step.waitedMinutes > 0 ? measuredMinutes(step.waitedMinutes) : '–'}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
