import { type ReadonlySignal, useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import { isHintDue } from '../../model/press.ts';
import type { PressPlaceValue } from './press-place.ts';
import { touchesOnGlass } from './touches-on-glass.ts';

const hintWords = 'Keep your finger on it until the bar is full: a drop of water must not press.';
const hintMs = 5000;

/** What the actions share, and the hint to show now. */
export function usePressPlace(): { place: PressPlaceValue; hint: ReadonlySignal<string | null> } {
  const hint = useSignal<string | null>(null);
  const glass = useMemo(() => touchesOnGlass(window), []);
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
