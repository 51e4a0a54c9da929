import type { Step } from '../../model/wash-plan.ts';
import type { Easel } from '../../state/easel.ts';
import { linkTo } from '../../state/route.ts';
import { buttonClass } from '../common/button.tsx';
import styles from './easel-top.module.css';

interface EaselTopProps {
  easel: Easel;
  paintingId: string;
  step: Step;
  steps: number;
}

/** The way back to the plan, where she stands in it, and whether it is kept. */
export function EaselTop({ easel, paintingId, step, steps }: EaselTopProps) {
  const finished = easel.session.value.phase === 'finished';
  return (
    <>
      <a class={buttonClass('quiet')} href={linkTo(paintingId, 'plan')}>
        Plan
      </a>
      <h1 class={styles.place}>{finished ? 'Finished' : `${step.n} of ${steps}: ${step.title}`}</h1>
      <span class={styles.saved} role="status">
        {easel.savedWord.value}
      </span>
    </>
  );
}
