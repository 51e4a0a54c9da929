import type { ComponentChildren } from 'preact';
import { pressMs } from '../../model/press.ts';
import { buttonClass } from '../common/button.tsx';
import styles from './press-button.module.css';
import { usePress } from './use-press.ts';

interface PressButtonProps {
  onAct: () => void;
  main?: boolean;
  disabled?: boolean;
  children: ComponentChildren;
}

/** An action at the easel: a finger holds it for 0.4 s, keys and a mouse act at once. */
export function PressButton({ onAct, main = false, disabled = false, children }: PressButtonProps) {
  const { held, handlers } = usePress(onAct);
  return (
    <button
      type="button"
      class={`${buttonClass(main ? 'main' : 'plain', true)} ${styles.press}`}
      style={{ '--press-time': `${pressMs}ms` }}
      data-held={held.value || undefined}
      disabled={disabled}
      {...handlers}
    >
      {children}
      <span class={styles.fill} />
    </button>
  );
}
