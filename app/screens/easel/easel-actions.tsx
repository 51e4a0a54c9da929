import type { Easel } from '../../state/easel.ts';
import { linkTo } from '../../state/route.ts';
import { Button, buttonClass } from '../common/button.tsx';
import styles from './easel-actions.module.css';
import { mainAction } from './main-action.ts';

/** At most one large thing to press, and the few others beside it. */
export function EaselActions({ easel, paintingId }: { easel: Easel; paintingId: string }) {
  const { phase, timer, stepIndex } = easel.session.value;
  const step = easel.step.value;
  if (phase === 'finished')
    return (
      <>
        <a class={buttonClass('main', true)} href={linkTo(paintingId, 'record')}>
          See the record
        </a>
        <Button large onClick={easel.back}>
          Back
        </Button>
      </>
    );
  if (!step) return null;
  const waiting = step.kind === 'dry' && phase === 'drying';
  return (
    <div class={styles.actions}>
      <Button
        look="main"
        large
        class={`${buttonClass('main', true)} ${styles.main}`}
        onClick={easel.goOn}
      >
        {mainAction(phase, step)}
      </Button>
      {waiting && (
        <Button large onClick={easel.stillWet}>
          Still wet
        </Button>
      )}
      {waiting && timer && timer.shineGoneMs === null && (
        <Button large onClick={easel.shineGone}>
          Shine gone
        </Button>
      )}
      <Button large disabled={stepIndex === 0} onClick={easel.back}>
        Back
      </Button>
      {phase !== 'paused' && (
        <Button large onClick={easel.pause}>
          Pause
        </Button>
      )}
    </div>
  );
}
