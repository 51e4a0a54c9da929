import type { Signal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { buttonClass } from '../controls/button.tsx';
import styles from './screen-layout.module.css';

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

interface ScreenLayoutProps {
  top: ComponentChildren;
  picture: ComponentChildren;
  /** Words and choices; scrolls when it must. */
  panel: ComponentChildren;
  /** What can be pressed: always in sight, under the thumb. */
  actions: ComponentChildren;
  /** The hand she paints with: across, the picture stands on the other side. */
  hand?: 'left' | 'right';
  /**
   * The panel stands low under a large picture until it is pulled up: by scrolling it, or by a
   * button of its own. Beside the picture it is always up. Left out: it is as high as it must.
   */
  isUp?: Signal<boolean>;
  name: string;
}

/** So far the panel is scrolled before that counts as pulling it up, px: a shaky finger scrolls less (own). */
const pulledFrom = 24;

/**
 * What pulls a low panel up: scrolling it by more than a finger shakes, but never while something in it is pressed,
 * which would move from under the finger; and keys that come into it.
 */
function usePullUp(isUp: Signal<boolean> | undefined) {
  const pressed = useRef(false);
  if (!isUp) return {};
  const release = (): void => {
    pressed.current = false;
  };
  return {
    onPointerDown: () => {
      pressed.current = true;
    },
    onPointerUp: release,
    onPointerCancel: release, // the browser takes the finger for scrolling
    onPointerLeave: release,
    onScroll: ({ currentTarget }: { currentTarget: HTMLElement }) => {
      if (!pressed.current && currentTarget.scrollTop >= pulledFrom) isUp.value = true;
    },
    onFocusIn: ({ target }: { target: EventTarget | null }) => {
      if (target instanceof Element && target.matches(':focus-visible')) isUp.value = true;
    },
  };
}

/** A picture, what is said about it and what can be done: one under the other, or side by side. */
export function ScreenLayout({
  top,
  picture,
  panel,
  actions,
  hand = 'right',
  isUp,
  name,
}: ScreenLayoutProps) {
  const pull = usePullUp(isUp);
  return (
    <main class={styles.workplace} data-hand={hand} data-screen={name}>
      <header class={styles.top}>{top}</header>
      <div class={styles.picture}>{picture}</div>
      <section
        class={styles.panel}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keys
        tabIndex={0}
        aria-label="What to do"
        data-low={(isUp && !isUp.value) || undefined}
        {...pull}
      >
        {panel}
      </section>
      <div class={styles.actions}>{actions}</div>
    </main>
  );
}
