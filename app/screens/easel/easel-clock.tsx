import { boneDrySign } from '../../core/drying/wetness.ts';
import { minuteMs } from '../../core/limits.ts';
import type { Step } from '../../core/plan/plan.ts';
import { isTimed, type TimeLeft } from '../../core/session/easel-time.ts';
import { minutesInWords } from '../../core/words/minutes.ts';
import type { Easel } from '../../state/session/easel.ts';
import styles from './easel-clock.module.css';

/** Past two days, and past two hours, nobody counts the minutes. */
export function timeOver(ms: number): string {
  const minutes = Math.floor(ms / minuteMs);
  const hours = Math.floor(minutes / 60);
  if (hours >= 48) return `over by ${Math.floor(hours / 24)} days`;
  if (hours >= 2) return `over by ${hours} h`;
  return minutes < 1 ? 'just over' : `over by ${minutes} min`;
}

/** What is waited for, the time to the earliest look, and how long it may take at the most. */
export function EaselClock({ easel, step }: { easel: Easel; step: Step }) {
  const { phase, weather } = easel.session.value;
  const time = easel.time.value;
  if (phase === 'paused') return <Face name="Paused" sign="What is wet dries on all the same." />;
  if (phase === 'painting' && isTimed(step))
    return <Face name="Time for this step" left={time.painting} sign="" />;
  if (time.drying && step.kind === 'dry')
    return (
      <>
        <Face name="Look again in" left={time.drying} sign={boneDrySign(weather)} />
        {time.shine && time.shine.highMs > 0 && <p class={styles.sign}>{shineWords(time.shine)}</p>}
      </>
    );
  if (isTimed(step))
    return <Face name="Planned for this step" sign={minutesInWords(step.paintMinutes)} />;
  return null;
}

function shineWords({ lowMs, highMs }: TimeLeft): string {
  const [low, high] = [Math.floor(lowMs / minuteMs), Math.ceil(highMs / minuteMs)];
  return `The shine goes ${low ? `in ${low}–${high}` : `within ${high}`} min; then leave it alone.`;
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

const pad = (n: number): string => String(n).padStart(2, '0');

/** '7:30', '1:17:00': milliseconds as a clock shows them, rounded up to the second. */
export function clockFace(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours
    ? `${hours}:${pad(minutes)}:${pad(seconds % 60)}`
    : `${minutes}:${pad(seconds % 60)}`;
}
