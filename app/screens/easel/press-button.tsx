import type { ComponentChildren } from 'preact';
import { pressMs } from '../../model/press.ts';
import { buttonClass } from '../common/button.tsx';
import styles from './press-button.module.css';
import { usePress } from './use-press.ts';

interface PressButtonProps {
  onAct: () => void;
  main?: boolean;
  disabled?: boolean;
  /** For one of several choices: whether it is the one taken. */
  pressed?: boolean;
  children: ComponentChildren;
}

/** An action at the easel: a finger holds it for 0.4 s, keys and a mouse act at once. */
export function PressButton({
  onAct,
  main = false,
  disabled = false,
  pressed,
  children,
}: PressButtonProps) {
  const { held, handlers } = usePress(onAct);
  return (
    <button
      type="button"
      class={`${buttonClass(main ? 'main' : 'plain', true)} ${styles.press}`}
      style={{ '--press-time': `${pressMs}ms` }}
      data-held={held.value || undefined}
      disabled={disabled}
      aria-pressed={pressed}
      {...handlers}
    >
      {children}
      <span class={styles.fill} />
    </button>
  );
}
