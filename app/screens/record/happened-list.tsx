import type { SessionRecord } from '../../model/session/record-of.ts';
import styles from './record-screen.module.css';

const at = (minutes: number): string => `${Math.round(minutes)} min`;

/** What went wrong with what was advised, what was practised, what she noted. */
export function HappenedList({ record }: { record: SessionRecord }) {
  const { troubles, notes, practised, steps } = record;
  const titleOf = (key: string): string => steps.find((step) => step.key === key)?.title ?? '';
  if (troubles.length + notes.length + practised.length === 0) return null;
  return (
    <section class={styles.section}>
      <h2 class={styles.heading}>What happened</h2>
      <ul class={styles.happened}>
        {troubles.map(({ atMinutes, stepKey, words, wetness, remedy }) => (
          <li key={`${atMinutes} ${words}`}>
            <strong>{words}</strong>, {titleOf(stepKey)}, after {at(atMinutes)}, sheet {wetness}.
            <br />
            <small>{remedy}</small>
          </li>
        ))}
        {practised.map((key) => (
          <li key={key}>Practised on a scrap: {titleOf(key)}.</li>
        ))}
        {notes.map(({ atMinutes, text }) => (
          <li key={`${atMinutes} ${text}`}>
            After {at(atMinutes)}: {text}
          </li>
        ))}
      </ul>
    </section>
  );
}
