import type { ComponentChildren } from 'preact';
import { buttonClass } from './button.tsx';
import styles from './top-bar.module.css';

interface TopBarProps {
  title: string;
  /** Where the way back leads, and what it is called. */
  back: string;
  backTo: string;
  children?: ComponentChildren;
}

export function TopBar({ title, back, backTo, children }: TopBarProps) {
  return (
    <>
      <a class={buttonClass('quiet')} href={backTo}>
        {back}
      </a>
      <h1 class={styles.title}>{title}</h1>
      {children}
    </>
  );
}
