import type { Step } from '../../model/wash-plan.ts';
import styles from './consequence.module.css';

/** What will happen because of her changes; nothing where nothing speaks against them. */
export function Consequence({ step }: { step: Pick<Step, 'consequence'> }) {
  if (!step.consequence) return null;
  return (
    <p class={styles.consequence} data-testid="consequence">
      <strong>Your change:</strong> {step.consequence}
    </p>
  );
}
