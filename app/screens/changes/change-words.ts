import type { Change } from '../../model/alteration.ts';

/** What she does, on the buttons. */
export const toDo: readonly (readonly [Change, string])[] = [
  ['leave-out', 'Leave out'],
  ['lighter', 'One value lighter'],
  ['darker', 'One value darker'],
];

/** What was done, in the list. */
export const done: Readonly<Record<Change, string>> = {
  'leave-out': 'Left out',
  lighter: 'One value lighter',
  darker: 'One value darker',
};

const goal: Readonly<Record<Change, string>> = {
  'leave-out': 'what is to go: what surrounds it goes on there',
  lighter: 'what is to be one value lighter',
  darker: 'what is to be one value darker',
};

export const hintFor = (change: Change, isBrush: boolean): string =>
  `${isBrush ? 'Paint over' : 'Draw a line round'} ${goal[change]}.`;

export const keysFor = (isBrush: boolean): string =>
  isBrush
    ? 'By keys: arrows move the brush, Enter dabs.'
    : 'By keys: arrows move an oval, + and − size it, [ and ] make it narrower or wider, Enter lays it down.';
