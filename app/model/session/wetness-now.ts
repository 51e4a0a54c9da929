import type { Wetness } from '../wetness.ts';
import type { DryingClock } from './drying-clock.ts';
import type { SessionState } from './session-state.ts';

/** How wet a drying wash is by its clocks and by what she said; session ms. */
export function wetnessOf(clock: DryingClock, atMs: number): Wetness {
  if (clock.dryMs !== null) return 'bone dry';
  if (clock.shineGoneMs === null) {
    if (atMs < clock.shineLowMs) return 'shiny';
    if (atMs < clock.shineHighMs) return 'satin';
  }
  return atMs < clock.endsLowMs ? 'damp' : 'almost dry';
}

/** How wet the sheet is where she works: while a wash goes on it shines; null clocks are bone dry. */
export function wetnessNow(state: SessionState, wetsNow: boolean, atMs: number): Wetness {
  if (state.phase === 'painting' && wetsNow) return 'shiny';
  return state.timer ? wetnessOf(state.timer, atMs) : 'bone dry';
}
