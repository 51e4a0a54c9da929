import { decidedEdges } from './decided-edges.ts';
import { decidedWhites } from './decided-whites.ts';
import type { Painting } from './painting.ts';
import type { Reading } from './reading.ts';

/** The reading as the plan is to follow it: with her decisions that need no new reading. */
export const decidedReading = (
  reading: Reading,
  { decisions, reference }: Pick<Painting, 'decisions' | 'reference'>,
): Reading => decidedEdges(decidedWhites(reading, decisions, reference), decisions, reference);
