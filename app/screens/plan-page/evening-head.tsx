import { eveningOf } from '../../model/evening-steps.ts';
import { eveningName } from '../../model/evening-words.ts';
import type { Step } from '../../model/wash-plan.ts';
import styles from './plan-sheet.module.css';

interface EveningHeadProps {
  step: Step;
  /** The step printed before it. */
  before: Step | undefined;
}

/** 'Second evening' over its first step, with what becomes of the sheet until then; nothing elsewhere. */
export function EveningHead({ step, before }: EveningHeadProps) {
  if (!before || eveningOf(before) === eveningOf(step)) return null;
  return (
    <li class={styles.evening}>
      <h4 class={styles.step}>{eveningName(eveningOf(step))}</h4>
      <p>
        Until then leave the sheet on its board to dry, flat and out of the sun; masking fluid, if
        any, no longer than its label allows.
      </p>
    </li>
  );
}
