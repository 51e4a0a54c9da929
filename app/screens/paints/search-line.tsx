import { Button } from '../common/button.tsx';
import styles from './search-line.module.css';

interface SearchLineProps {
  /** What is being done. */
  said: string;
  /** 0..1. */
  part: number;
  onStop: () => void;
}

/** What is being tried, how far it is, and a way to stop it. */
export function SearchLine({ said, part, onStop }: SearchLineProps) {
  return (
    <div class={styles.line}>
      <p role="status">{said} …</p>
      <progress
        class={styles.bar}
        max={100}
        value={Math.round(part * 100)}
        aria-label="How far it is"
      />
      <Button onClick={onStop}>Stop</Button>
    </div>
  );
}
