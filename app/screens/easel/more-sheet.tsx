import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { Button } from '../common/button.tsx';
import styles from './more-sheet.module.css';

interface MoreSheetProps {
  onClose: () => void;
  children: ComponentChildren;
}

/** Further actions over the easel; the clock goes on behind it. */
export function MoreSheet({ onClose, children }: MoreSheetProps) {
  const sheet = useRef<HTMLDialogElement>(null);
  useEffect(() => sheet.current?.showModal(), []);
  return (
    <dialog ref={sheet} class={styles.sheet} aria-labelledby="more-title" onClose={onClose}>
      <header class={styles.top}>
        <h2 id="more-title">More</h2>
        <Button large onClick={() => sheet.current?.close()}>
          Close
        </Button>
      </header>
      <div class={styles.rows}>{children}</div>
    </dialog>
  );
}
