import type { EventBody } from './session-event.ts';
import type { SessionState } from './session-state.ts';

/** A wet finger taps twice: the same action again so soon is not meant (own limit). */
export const ghostTapMs = 400;

/** Start and pause are one button. Null where repeating does no harm or is meant. */
function buttonOf(what: EventBody): string | null {
  switch (what.kind) {
    case 'paused':
    case 'resumed':
      return 'pause';
    case 'step-begun':
    case 'painting-done':
    case 'still-wet':
    case 'shine-gone':
    case 'dry-now':
    case 'step-done':
    case 'back':
      return what.kind;
    case 'practise':
      return `practise ${what.doing}`;
    default:
      return null;
  }
}

export function isGhostTap(state: SessionState, what: EventBody): boolean {
  const button = buttonOf(what);
  const before = button === null ? undefined : state.taps[button];
  return before !== undefined && state.atMs - before < ghostTapMs;
}

export function rememberTap(state: SessionState, what: EventBody): SessionState {
  const button = buttonOf(what);
  return button === null ? state : { ...state, taps: { ...state.taps, [button]: state.atMs } };
}
