import type { Decision } from './painting.ts';
import type { Reading } from './reading.ts';
import type { Reference } from './reference.ts';

/** The reading with its edges and borders as she wants them on the sheet. */
export const decidedEdges = (
  reading: Reading,
  _decisions: readonly Decision[],
  _cut: Pick<Reference, 'crop' | 'sheet'>,
): Reading => reading;
