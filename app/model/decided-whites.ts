import type { Decision } from './painting.ts';
import type { Reading } from './reading.ts';
import type { Reference } from './reference.ts';

/** The reading with the ways she chose for its whites. */
export const decidedWhites = (
  reading: Reading,
  _decisions: readonly Decision[],
  _cut: Pick<Reference, 'crop' | 'sheet'>,
): Reading => reading;
