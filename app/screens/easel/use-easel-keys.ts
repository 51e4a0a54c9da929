import { useEffect } from 'preact/hooks';
import type { Easel } from '../../state/easel.ts';

/** One key each, so that a page-turner pedal works: forward goes on, backward goes back. */
export function useEaselKeys(easel: Easel, toggleGrey: () => void): void {
  useEffect(() => {
    const actions: Record<string, () => void> = {
      PageDown: easel.goOn,
      ArrowRight: easel.goOn,
      PageUp: easel.back,
      ArrowLeft: easel.back,
      g: toggleGrey,
      p: easel.pause,
      w: easel.stillWet,
    };
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
      const act = actions[event.key];
      if (!act) return;
      event.preventDefault();
      act();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [easel, toggleGrey]);
}
