import { type ReadonlySignal, useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { useContext, useLayoutEffect, useRef } from 'preact/hooks';
import type { Point } from '../../core/colour/lab.ts';
import { buttonClass } from '../controls/button.tsx';
import { mayBeFinger, pressMs } from './press.ts';
import styles from './press-button.module.css';
import { PressPlace } from './press-place.ts';
import { type Pointers, usePointers } from './use-pointers.ts';

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

interface Press {
  readonly held: ReadonlySignal<boolean>;
  readonly handlers: Pointers['handlers'] & {
    onContextMenu(event: Event): void;
    onKeyDown(event: KeyboardEvent): void;
    onClick(event: MouseEvent): void;
  };
}

const acrossPx = ({ width, height }: PointerEvent): number => Math.max(width, height);
const placeOnScreen = ({ clientX, clientY }: PointerEvent): Point => [clientX, clientY];

/**
 * A finger or pen acts by a press of `pressMs`, a key and a mouse at once: water sends neither. What
 * is no finger spoils the press until it is lifted.
 */
function usePress(act: () => void): Press {
  const place = useContext(PressPlace);
  const held = useSignal(false);
  const latest = useRef(act);
  latest.current = act;
  const began = useRef<Point | null>(null);
  const waiting = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const fromGlass = useRef(false);

  const drop = (): void => {
    clearTimeout(waiting.current);
    pointers.places.clear();
    began.current = null;
    held.value = false;
  };
  const pointers: Pointers = usePointers({
    most: 1,
    captures: false,
    placeOf: placeOnScreen,
    onDown(event, finger) {
      fromGlass.current = event.pointerType !== 'mouse';
      if (!fromGlass.current) return false;
      const touches = Math.max(1, place.touches.count);
      if (!mayBeFinger(finger, { place: finger, acrossPx: acrossPx(event), touches })) {
        drop();
        return false;
      }
      began.current = finger;
      held.value = true;
      waiting.current = setTimeout(() => {
        drop();
        place.pressed();
        latest.current();
      }, pressMs);
      return true;
    },
    onMove(event, finger) {
      const contact = { place: finger, acrossPx: acrossPx(event), touches: 1 };
      if (began.current && !mayBeFinger(began.current, contact)) drop();
    },
    onUp() {
      drop();
      place.tooSoon();
    },
    onCancel: drop,
  });
  useLayoutEffect(() => {
    const stop = place.touches.onAnother(drop);
    return () => {
      stop();
      clearTimeout(waiting.current);
    };
  }, [place]);

  return {
    held,
    handlers: {
      ...pointers.handlers,
      onContextMenu: (event) => event.preventDefault(), // what a long touch asks for elsewhere
      onKeyDown: (event) => event.repeat && event.preventDefault(), // a key held down acts once
      onClick(event) {
        const isKey = event.detail === 0;
        if (isKey || !fromGlass.current) latest.current();
        fromGlass.current = false;
      },
    },
  };
}
