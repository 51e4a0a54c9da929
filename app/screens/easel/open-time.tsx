import type { Easel } from '../../state/easel.ts';
import { clockFace } from './clock-face.ts';
import styles from './easel-clock.module.css';

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
