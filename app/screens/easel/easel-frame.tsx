import type { ComponentChildren } from 'preact';
import styles from './easel-frame.module.css';

interface EaselFrameProps {
  top: ComponentChildren;
  picture: ComponentChildren;
  /** Words; they scroll when they must, and nothing in them is needed to act. */
  panel: ComponentChildren;
  /** What the picture can show: one row under the thumb. */
  views: ComponentChildren;
  /** What can be done: always in sight, in the lower third. */
  actions: ComponentChildren;
  /** The hand she paints with: across, the picture stands on the other side. */
  hand: 'left' | 'right';
}

/** The easel's places: upright one under the other, across the picture beside the rest. */
export function EaselFrame({ top, picture, panel, views, actions, hand }: EaselFrameProps) {
  return (
    <main class={styles.easel} data-hand={hand} data-screen="easel">
      <header class={styles.top}>{top}</header>
      <div class={styles.picture}>{picture}</div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keys */}
      <section class={styles.panel} tabIndex={0} aria-label="What to do">
        {panel}
      </section>
      <div class={styles.views}>{views}</div>
      <section class={styles.actions} aria-label="Actions">
        {actions}
      </section>
    </main>
  );
}
