import { minutesInWords } from '../../model/minutes-in-words.ts';
import type { TimeLeft } from '../../model/session/time-left.ts';
import type { Step } from '../../model/wash-plan.ts';
import { wetnessSign } from '../../model/wetness.ts';
import type { Easel } from '../../state/easel.ts';
import styles from './easel-clock.module.css';

const pad = (n: number): string => String(n).padStart(2, '0');

function clockFace(ms: number): string {
  const seconds = Math.ceil(ms / 1000);
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor(seconds / 60) % 60;
  return hours
    ? `${hours}:${pad(minutes)}:${pad(seconds % 60)}`
    : `${minutes}:${pad(seconds % 60)}`;
}

const minutesOver = (ms: number): string => {
  const minutes = Math.floor(ms / 60_000);
  return minutes < 1 ? 'just over' : `over since ${minutes} min`;
};

/** What is waited for, the time to the earliest look, and how long it may take at the most. */
export function EaselClock({ easel, step }: { easel: Easel; step: Step }) {
  const { phase } = easel.session.value;
  const time = easel.time.value;
  if (phase === 'paused')
    return <Face name="Paused" figure="" words="What is wet dries on all the same." />;
  if (phase === 'painting' && step.paintMinutes[1] > 0)
    return (
      <Face
        name="Time for this step"
        {...faceOf(time.painting, `planned ${minutesInWords(step.paintMinutes)}`)}
      />
    );
  if (time.drying && step.kind === 'dry')
    return (
      <>
        <Face
          name="Look again in"
          {...faceOf(time.drying, `Bone dry: ${wetnessSign['bone dry']}.`)}
        />
        {time.shine && (
          <p class={styles.sign}>Shine gone in {rangeLeft(time.shine)}; then leave it alone.</p>
        )}
      </>
    );
  if (step.paintMinutes[1] > 0)
    return <Face name="Planned" figure="" words={minutesInWords(step.paintMinutes)} />;
  return null;
}

const rangeLeft = ({ lowMs, highMs }: TimeLeft): string =>
  highMs === 0 ? 'a moment' : `${Math.floor(lowMs / 60_000)}–${Math.ceil(highMs / 60_000)} min`;

function faceOf(left: TimeLeft, sign: string): { figure: string; words: string } {
  if (left.overMs > 0) return { figure: '0:00', words: `${minutesOver(left.overMs)}. ${sign}` };
  if (left.lowMs > 0)
    return {
      figure: clockFace(left.lowMs),
      words: `${clockFace(left.highMs)} at the most. ${sign}`,
    };
  return { figure: clockFace(left.highMs), words: `at the most; look now and then. ${sign}` };
}

function Face({ name, figure, words }: { name: string; figure: string; words: string }) {
  return (
    <div class={styles.face} role="timer" aria-label={name} data-testid="clock">
      <span class={styles.name}>{name}</span>
      {figure && <span class={styles.figure}>{figure}</span>}
      <span class={styles.sign}>{words}</span>
    </div>
  );
}
