import { type ReadonlySignal, useSignal } from '@preact/signals';
import { createContext } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { isHintDue } from './press.ts';

/** What all the actions of the easel share. */
interface PressPlaceValue {
  readonly touches: TouchesOnGlass;
  /** A press was held to its end. */
  pressed(): void;
  /** A finger left before that. */
  tooSoon(): void;
}

const alone: TouchesOnGlass = {
  count: 1,
  onAnother: () => () => {},
  swallowClick: () => {},
  leave: () => {},
};

export const PressPlace = createContext<PressPlaceValue>({
  touches: alone,
  pressed: () => {},
  tooSoon: () => {},
});

const hintWords = 'Keep your finger on it until the bar is full: a drop of water must not press.';
const hintMs = 5000;

/** What the actions share, and the hint to show now. */
export function usePressPlace(): { place: PressPlaceValue; hint: ReadonlySignal<string | null> } {
  const hint = useSignal<string | null>(null);
  const glass = useMemo(() => watchTouches(window), []);
  const place = useMemo(() => {
    let tooSoonInARow = 0;
    return {
      touches: glass,
      pressed() {
        glass.swallowClick();
        tooSoonInARow = 0;
        hint.value = null;
      },
      tooSoon() {
        tooSoonInARow++;
        if (isHintDue(tooSoonInARow)) hint.value = hintWords;
      },
    };
  }, [glass, hint]);
  useEffect(() => glass.leave, [glass]);
  useEffect(() => {
    if (!hint.value) return;
    const gone = setTimeout(() => {
      hint.value = null;
    }, hintMs);
    return () => clearTimeout(gone);
  }, [hint, hint.value]);
  return { place, hint };
}

/** Counts what touches the glass anywhere on the page, so that one press can be told from a splash. */
interface TouchesOnGlass {
  readonly count: number;
  /** Calls back whenever another touch comes down; answers how to stop. */
  onAnother(tell: () => void): () => void;
  /** The finger that is down has done its work: the click that follows when it leaves is nobody's. */
  swallowClick(): void;
  leave(): void;
}

function watchTouches(window: Window): TouchesOnGlass {
  const down = new Set<number>();
  const listeners = new Set<() => void>();
  const controller = new AbortController();
  let swallowing = false;
  const when = { capture: true, signal: controller.signal };
  window.addEventListener(
    'pointerdown',
    ({ pointerType, isPrimary, pointerId }) => {
      swallowing = false;
      if (pointerType !== 'touch') return;
      if (isPrimary) down.clear(); // the first of them: an end that was never told is forgotten
      down.add(pointerId);
      if (down.size > 1) for (const tell of listeners) tell();
    },
    when,
  );
  for (const kind of ['pointerup', 'pointercancel'] as const)
    window.addEventListener(kind, ({ pointerId }) => down.delete(pointerId), when);
  // What stands under the finger by then is another button, or a link that leads away.
  window.addEventListener(
    'click',
    (event) => {
      if (!swallowing || event.detail === 0) return;
      swallowing = false;
      event.preventDefault();
      event.stopPropagation();
    },
    when,
  );
  return {
    get count() {
      return down.size;
    },
    onAnother(tell) {
      listeners.add(tell);
      return () => listeners.delete(tell);
    },
    swallowClick() {
      swallowing = true;
    },
    leave: () => controller.abort(),
  };
}
