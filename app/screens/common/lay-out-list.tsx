import { layOut } from '../../model/lay-out.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import styles from './lay-out-list.module.css';

/** What to lay out before she starts: paints, brushes, and what else the plan asks for. */
export function LayOutList({ plan }: { plan: WashPlan }) {
  return (
    <dl class={styles.list} data-testid="lay-out">
      {layOut(plan).map(({ name, things }) => (
        <div key={name} class={styles.row}>
          <dt>{name}</dt>
          <dd>{things.join('; ')}</dd>
        </div>
      ))}
    </dl>
  );
}
