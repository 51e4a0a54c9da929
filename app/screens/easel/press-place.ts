import { createContext } from 'preact';
import type { TouchesOnGlass } from './touches-on-glass.ts';

/** What all the actions of the easel share. */
export interface PressPlaceValue {
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
