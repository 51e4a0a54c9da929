import type { WashPlan } from '../../core/plan/plan.ts';
import { paintCautions } from '../../core/plan/steps/step-cautions.ts';
import { deferral } from '../../core/words/cautions.ts';
import { type Sentence, words } from '../../core/words/plan/words.ts';
import styles from './cautions.module.css';

/** What may hurt someone at a step: right under its prompt. Nothing where nothing may. */
export function Cautions({ said }: { said: readonly Sentence[] }) {
  if (said.length === 0) return null;
  return (
    <div class={styles.due} data-testid="cautions">
      {said.map(words).map((caution, n) => (
        <p key={caution}>
          {n === 0 && <strong>Mind: </strong>}
          {caution}
        </p>
      ))}
    </div>
  );
}

/** The paints of a plan that ask for care, in full, and whose word counts. Nothing where none does. */
export function PaintCautions({ plan }: { plan: Pick<WashPlan, 'optics'> }) {
  const said = paintCautions(plan);
  if (said.length === 0) return null;
  return (
    <div class={styles.paints} data-testid="paint-cautions">
      {[...said, deferral].map((caution) => (
        <p key={caution}>{caution}</p>
      ))}
    </div>
  );
}
