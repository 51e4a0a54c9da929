import type { Signal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { Button } from '../common/button.tsx';
import type { AlterDecision } from './change-drawing.tsx';
import styles from './change-list.module.css';
import { done } from './change-words.ts';

interface ChangeListProps {
  changes: readonly AlterDecision[];
  /** The one shown in the picture. */
  pointed: Signal<string | null>;
  onTakeBack: (id: string) => void;
}

/** What she changed, each to be seen in the picture and taken back by itself. */
export function ChangeList({ changes, pointed, onTakeBack }: ChangeListProps) {
  const list = useRef<HTMLOListElement>(null);
  if (changes.length === 0) return <p class={styles.quiet}>Nothing is changed yet.</p>;
  const point = (id: string): void => {
    pointed.value = id;
  };
  return (
    <ol ref={list} class={styles.list} tabIndex={-1} aria-label="What you changed">
      {changes.map(({ id, change }, i) => (
        <li
          key={id}
          class={styles.row}
          onBlurCapture={() => {
            pointed.value = null;
          }}
        >
          <button
            type="button"
            class={styles.name}
            aria-pressed={pointed.value === id}
            onFocus={() => point(id)}
            onClick={() => point(id)}
          >
            {i + 1} {done[change]}
          </button>
          <Button
            look="quiet"
            aria-label={`Take back ${i + 1}, ${done[change]}`}
            onFocus={() => point(id)}
            onClick={() => {
              pointed.value = null;
              list.current?.focus({ preventScroll: true }); // this row goes away
              onTakeBack(id);
            }}
          >
            Take back
          </Button>
        </li>
      ))}
    </ol>
  );
}
