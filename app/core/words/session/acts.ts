import type { Act } from '../../session/session-event.ts';

/** What she can take back, by the words on its button. */
export const actWords: Readonly<Record<Act, string>> = {
  'step-begun': 'Start',
  'stroke-down': 'Wash is on',
  'painting-done': 'Done',
  'step-done': 'Done',
  scrap: 'Scrap compared',
  'still-wet': 'Still wet',
  'shine-gone': 'Shine gone',
  'dry-now': 'It is bone dry',
  back: 'Back',
  paused: 'Pause',
  resumed: 'Go on',
  photo: 'Photo for the record',
  compared: 'Sheet compared',
  mended: 'Advice taken',
};
