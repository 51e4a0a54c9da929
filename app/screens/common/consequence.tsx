import type { Step } from '../../model/wash-plan.ts';
import styles from './consequence.module.css';

/** The gravest of what will happen because of her changes, or of the time she has, the rest on request; nothing where nothing speaks against them. */
export function Consequence({ step }: { step: Pick<Step, 'consequence' | 'alsoHappens'> }) {
  const { consequence, alsoHappens = [] } = step;
  if (!consequence) return null;
  return (
    <div class={styles.consequence} data-testid="consequence">
      <p>
        <strong>Mind:</strong> {consequence}
      </p>
      {alsoHappens.length > 0 && (
        <details>
          <summary class={styles.more}>What else it does</summary>
          {alsoHappens.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </details>
      )}
    </div>
  );
}
