import { isOfReach } from '../../model/reach-codes.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import styles from './reach-list.module.css';

/** What can't be reached: the most important in a sentence, all of it where there is more. */
export function ReachList({ plan }: { plan: Pick<WashPlan, 'warnings'> }) {
  const [first, ...more] = plan.warnings;
  const reach = plan.warnings.filter(isOfReach);
  if (!first) return null;
  return (
    <div class={styles.reach}>
      <p class={styles.first}>{first.text}</p>
      {more.length > 0 && reach.length > 0 && (
        <details>
          <summary class={styles.summary}>What can't be reached ({reach.length})</summary>
          <ul class={styles.list}>
            {reach.map(({ code, text }) => (
              <li key={code}>{text}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}
