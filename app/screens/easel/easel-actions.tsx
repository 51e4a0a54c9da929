import type { Step } from '../../core/plan/plan.ts';
import { isGettingReady } from '../../core/session/easel-time.ts';
import type { Phase } from '../../core/session/session-state.ts';
import { linkTo } from '../../state/router.ts';
import type { Easel } from '../../state/session/easel.ts';
import { buttonClass } from '../../ui/controls/button.tsx';
import { PressButton } from '../../ui/pointer/press-button.tsx';
import styles from './easel-actions.module.css';

interface EaselActionsProps {
  easel: Easel;
  paintingId: string;
  onMore: () => void;
  /** How an action is pressed, said once after a touch that was too short. */
  hint: string | null;
}

/** At most one large thing to press, and the few others under it. */
export function EaselActions({ easel, paintingId, onMore, hint }: EaselActionsProps) {
  const { phase, timer, stepIndex } = easel.session.value;
  const step = easel.step.value;
  if (!step) return null;
  if (!easel.inCharge.value) return <Elsewhere easel={easel} />;
  const finished = phase === 'finished';
  // No brush on the paper, and something of it dry by now or drying.
  const atRest = phase !== 'painting' && easel.bandsDone.value.size > 0;
  const waiting = step.kind === 'dry' && phase === 'drying';
  return (
    <div class={styles.actions} data-waiting={waiting || undefined}>
      <p class={styles.hint} role="status">
        {hint}
      </p>
      {finished ? (
        <a
          key="main"
          class={`${buttonClass('main', true)} ${styles.main}`}
          href={linkTo(paintingId, 'record')}
        >
          See the record
        </a>
      ) : (
        <div key="main" class={styles.main}>
          <PressButton main onAct={easel.goOn}>
            {mainAction(phase, step, easel.desk.value?.plan.steps[stepIndex + 1])}
          </PressButton>
        </div>
      )}
      {waiting && (
        <PressButton key="wet" onAct={easel.stillWet}>
          Still wet
        </PressButton>
      )}
      {waiting && timer && timer.shineGoneMs === null && (
        <PressButton key="shine" onAct={easel.shineGone}>
          Shine gone
        </PressButton>
      )}
      {step.soften.length > 0 && !finished && (
        <PressButton
          key="stroke"
          disabled={phase !== 'painting'}
          onAct={() => easel.tell({ kind: 'stroke-down', key: step.key })}
        >
          Wash is on
        </PressButton>
      )}
      <div key="always" class={styles.always} data-slim>
        <PressButton key="back" disabled={stepIndex === 0 && !finished} onAct={easel.back}>
          Back
        </PressButton>
        {!finished && phase !== 'paused' && (
          <PressButton key="pause" onAct={easel.pause}>
            Pause
          </PressButton>
        )}
        {atRest && (
          <a key="compare" class={buttonClass('plain', true)} href={linkTo(paintingId, 'compare')}>
            Compare
          </a>
        )}
        <button type="button" class={buttonClass('plain', true)} onClick={onMore}>
          More
        </button>
      </div>
    </div>
  );
}

/** Another window has the session: this one only shows it. */
function Elsewhere({ easel }: { easel: Easel }) {
  return (
    <div class={styles.actions}>
      <p class={styles.elsewhere} role="status">
        This session goes on in another window. Here you see how it stands.
      </p>
      <div class={styles.main}>
        <PressButton main onAct={easel.takeOver}>
          Go on here
        </PressButton>
      </div>
    </div>
  );
}

/** What the large button says. */
function mainAction(phase: Phase, step: Pick<Step, 'kind'>, next?: Pick<Step, 'kind'>): string {
  if (phase === 'paused') return 'Go on';
  if (isGettingReady(step)) return next && isGettingReady(next) ? 'Done' : 'Ready to paint';
  if (step.kind === 'dry') return 'It is bone dry';
  if (step.kind === 'last-look') return 'Finish';
  return phase === 'painting' ? 'Done' : 'Start';
}
