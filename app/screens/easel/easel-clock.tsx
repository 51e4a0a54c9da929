import { useSignal } from '@preact/signals';
import { minuteMs } from '../../core/limits.ts';
import type { Step } from '../../core/plan/plan.ts';
import { type DryingLeft, isTimed, type TimeLeft } from '../../core/session/easel-time.ts';
import { boneDrySign } from '../../core/words/drying/drying-words.ts';
import { minutesInWords } from '../../core/words/minutes.ts';
import { clockFace, timeOver, waitWords } from '../../core/words/session/wait-words.ts';
import type { Easel } from '../../state/session/easel.ts';
import styles from './easel-clock.module.css';

/** What is waited for, one figure in the lead, and when to look. */
export function EaselClock({ easel, step }: { easel: Easel; step: Step }) {
  const { phase, weather } = easel.session.value;
  const time = easel.time.value;
  if (phase === 'paused') return <Face name="Paused" sign="What is wet dries on all the same." />;
  if (phase === 'painting' && isTimed(step))
    return <Face name="Time for this step" left={time.painting} sign="" />;
  if (time.drying && step.kind === 'dry')
    return (
      <>
        <WaitFace left={time.drying} wallMs={time.wallMs} sign={boneDrySign(weather)} />
        {time.shine && time.shine.highMs > 0 && <p class={styles.sign}>{shineWords(time.shine)}</p>}
      </>
    );
  if (isTimed(step))
    return <Face name="Planned for this step" sign={minutesInWords(step.paintMinutes)} />;
  return null;
}

/** The eye tells it, the minutes only when to look: how soon a shine goes no one knows beforehand. */
function shineWords({ lowMs, highMs }: TimeLeft): string {
  const [low, high] = [Math.floor(lowMs / minuteMs), Math.ceil(highMs / minuteMs)];
  const when = low ? `in ${low} min, or only in ${high}` : `any time within ${high} min`;
  return `Watch the shine: it may go ${when}. Then leave it.`;
}

interface WaitFaceProps {
  left: DryingLeft;
  /** The clock on the wall now. */
  wallMs: number;
  sign: string;
}

/** A wait is told by one figure; a touch on it shows from when to when, and the sign of bone dry once more. */
function WaitFace({ left, wallMs, sign }: WaitFaceProps) {
  const whole = useSignal(false);
  const { name, lead, look, range } = waitWords(left, wallMs);
  return (
    <div class={styles.face} role="timer" aria-label="Drying" data-testid="clock">
      <span class="quiet">{name}</span>
      <button
        type="button"
        class={styles.lead}
        aria-expanded={whole.value}
        onClick={() => {
          whole.value = !whole.value;
        }}
      >
        {lead}
      </button>
      {whole.value && (
        <>
          <span class={styles.range} data-testid="clock-range">
            {range}
          </span>
          <span class={styles.sign}>{sign}</span>
        </>
      )}
      <strong class={styles.sign}>{look}</strong>
    </div>
  );
}

interface FaceProps {
  name: string;
  left?: TimeLeft;
  sign: string;
}

/** The figure counts to the earliest end, then to the latest; past that it says how long ago. */
function Face({ name, left, sign }: FaceProps) {
  return (
    <div class={styles.face} role="timer" aria-label={name} data-testid="clock">
      <span class="quiet">{name}</span>
      {left && <Figure left={left} />}
      {sign && <span class={styles.sign}>{sign}</span>}
    </div>
  );
}

function Figure({ left: { lowMs, highMs, overMs } }: { left: TimeLeft }) {
  if (overMs > 0)
    return (
      <span class={styles.figure}>
        0:00 <small>{timeOver(overMs)}</small>
      </span>
    );
  return (
    <span class={styles.figure}>
      {clockFace(lowMs > 0 ? lowMs : highMs)}{' '}
      <small>{lowMs > 0 ? `to ${clockFace(highMs)}` : 'at the most'}</small>
    </span>
  );
}

/** Shorter than this is no end to aim at. */
const soonMs = 10_000;

/** How long the edge of a stroke stays open, from the moment she said the stroke is down. */
export function OpenTime({ easel }: { easel: Easel }) {
  const { open } = easel.time.value;
  if (!open) return null;
  const { lowMs, highMs } = open;
  const low = lowMs > soonMs ? `${clockFace(lowMs)} to ` : 'at the most ';
  return (
    <p class={styles.sign} role="timer" aria-label="Open for softening" data-testid="open-time">
      {highMs > 0
        ? `Soften it now: ${low}${clockFace(highMs)}.`
        : 'This edge has set: leave it until it is bone dry.'}
    </p>
  );
}
