import type { ComponentChildren } from 'preact';
import styles from './page-layout.module.css';

interface PageLayoutProps {
  name: string;
  /** Stays in sight while the page scrolls. */
  top: ComponentChildren;
  /** What this page lays out otherwise; its rules name `main`, so that they go before the ones here. */
  class?: string | undefined;
  children: ComponentChildren;
}

/** A page of text and lists that scrolls as a whole, under its head. */
export function PageLayout({ name, top, class: own = '', children }: PageLayoutProps) {
  return (
    <main class={`${styles.page} ${own}`} data-screen={name}>
      <header class={styles.top}>{top}</header>
      {children}
    </main>
  );
}
