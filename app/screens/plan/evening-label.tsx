import { eveningOf } from '../../model/evening-steps.ts';
import { eveningName } from '../../model/evening-words.ts';
import type { Step, WashPlan } from '../../model/wash-plan.ts';
import styles from './evening-panel.module.css';

/** Which evening a step belongs to, where the plan takes several. */
export function EveningLabel({ plan, step }: { plan: WashPlan; step: Step }) {
  const last = Math.max(...plan.steps.map(eveningOf));
  return last > 1 ? <p class={styles.evening}>{eveningName(eveningOf(step))}</p> : null;
}
