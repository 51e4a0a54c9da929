import styles from './progress-bar.module.css';

interface ProgressBarProps {
  /** 0..1. */
  part: number;
  /** How it lies where it stands. */
  class?: string | undefined;
}

/** How far a piece of work is; what it is is said beside it. */
export const ProgressBar = ({ part, class: own = '' }: ProgressBarProps) => (
  <progress
    class={`${styles.bar} ${own}`}
    max={100}
    value={Math.round(part * 100)}
    aria-label="How far it is"
  />
);
