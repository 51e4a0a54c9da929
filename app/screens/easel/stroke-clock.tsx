import type { Step } from '../../model/wash-plan.ts';
import type { Easel } from '../../state/easel.ts';
import { clockFace } from './clock-face.ts';
import styles from './easel-clock.module.css';
import { PressButton } from './press-button.tsx';

/** How long the edge of a stroke stays open, from the moment she says the stroke is down. */
export function StrokeClock({ easel, step }: { easel: Easel; step: Step }) {
  const { open } = easel.time.value;
  return (
    <div>
      {open && (
        <p class={styles.sign} role="timer" aria-label="Open for softening" data-testid="open-time">
          {open.highMs > 0
            ? `Soften it now: ${open.lowMs > 10_000 ? `${clockFace(open.lowMs)} to ` : 'at the most '}${clockFace(open.highMs)}.`
            : 'This edge has set: leave it until it is bone dry.'}
        </p>
      )}
      <PressButton onAct={() => easel.tell({ kind: 'stroke-down', key: step.key })}>
        {open ? 'Next stroke is down' : 'Stroke is down'}
      </PressButton>
    </div>
  );
}
