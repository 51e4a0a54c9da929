import { promptNow } from '../../model/session/prompt-now.ts';
import type { Step } from '../../model/wash-plan.ts';
import type { Easel } from '../../state/easel.ts';
import styles from './easel-panel.module.css';

const ends = 'Finished. What you did, and how long it took, stands in the record.';

/** The one sentence to act on; it follows the clock by itself, so that the panel round it need not. */
export function EaselPrompt({ easel, step }: { easel: Easel; step: Step }) {
  const session = easel.session.value;
  return (
    <p class={styles.prompt} data-testid="prompt">
      {session.phase === 'finished' ? ends : promptNow(step, session, easel.time.value)}
    </p>
  );
}
