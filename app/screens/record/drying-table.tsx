import { minutesInWords } from '../../model/minutes-in-words.ts';
import type { StepRecord } from '../../model/session/record-of.ts';
import styles from './record-screen.module.css';

const real = (minutes: number | null): string =>
  minutes === null ? 'not told' : minutes < 1 ? 'under 1 min' : `${Math.round(minutes)} min`;

/** What was reckoned at brush down and what she then saw, wash by wash. */
export function DryingTable({ steps }: { steps: readonly StepRecord[] }) {
  const washes = steps.filter(({ reckonedDryMinutes }) => reckonedDryMinutes !== null);
  if (washes.length === 0) return null;
  return (
    <section class={styles.section}>
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
                {real(step.shineMinutes)}
                <br />
                <small>reckoned {minutesInWords(step.reckonedShineMinutes ?? [0, 0])}</small>
              </td>
              <td data-name="Bone dry">
                {real(step.dryMinutes)}
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
