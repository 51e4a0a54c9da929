import { useEffect } from 'preact/hooks';
import type { Easel } from '../../state/session/easel.ts';
import { isShortcut } from '../../ui/pointer/stage-keys.ts';
import type { EaselViewState } from './use-easel-view.ts';

const pressable = 'button, a[href], summary, [role=button]';
const written = 'input, textarea, select, [contenteditable]';

/** Whether a key belongs to what has the focus and not to the easel. */
function isTaken({ key, target }: KeyboardEvent): boolean {
  if (!(target instanceof Element)) return false;
  if (target.closest(written) || target.closest('dialog')) return true;
  if (key === 'Enter' || key === ' ') return target.closest(pressable) !== null;
  // The words beside the picture are read on by these.
  return (key === 'ArrowUp' || key === 'ArrowDown') && target.closest('[tabindex="0"]') !== null;
}

/**
 * One key each, at once, so that a page-turner pedal works: forward goes on, backward goes back.
 * Letters and digits can be left out: a voice or a chance touch may type them (WCAG 2.1, 2.1.4).
 */
export function useEaselKeys(
  easel: Easel,
  { toggleGrey, look }: EaselViewState,
  letterKeys: boolean,
): void {
  useEffect(() => {
    const actions: Record<string, () => void> = {
      PageDown: easel.goOn,
      ArrowRight: easel.goOn,
      ArrowDown: easel.goOn,
      Enter: easel.goOn,
      ' ': easel.goOn,
      PageUp: easel.back,
      ArrowLeft: easel.back,
      ArrowUp: easel.back,
      g: toggleGrey,
      p: easel.pause,
      w: easel.stillWet,
      s: easel.shineGone,
      d: () => easel.step.value && easel.tell({ kind: 'stroke-down', key: easel.step.value.key }),
      u: easel.takeBack,
      1: () => look('where'),
      2: () => look('reference'),
      3: () => look('band'),
      4: () => look('sheet'),
      5: () => look('edges'),
    };
    const onKey = (event: KeyboardEvent): void => {
      if (isShortcut(event) || event.repeat) return;
      if (!letterKeys && event.key !== ' ' && event.key.length === 1) return;
      const act = actions[event.key];
      if (!act || isTaken(event)) return;
      event.preventDefault();
      act();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [easel, toggleGrey, look, letterKeys]);
}
