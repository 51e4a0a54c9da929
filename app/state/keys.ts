import { type KeptAir, usualAir } from '../model/drying/kept-air.ts';
import type { OwnBox } from '../model/own-box.ts';
import type { Painting } from '../model/painting.ts';
import { readingEngine } from '../model/reading.ts';
import { standingDecisions } from '../model/standing-decisions.ts';
import { planEngine } from '../model/wash-plan.ts';
import { planDecisionKinds, planWishes, readingWishes } from '../model/wishes.ts';

/** All that a reading depends on: the same key, the same reading. */
export function readingKeyOf({ reference, decisions }: Painting): string {
  return JSON.stringify([readingEngine, reference, readingWishes(decisions, reference)]);
}

/** All that a plan depends on. */
export function planKeyOf(painting: Painting, box: OwnBox, air: KeptAir = usualAir): string {
  const { decisions } = painting;
  const over = standingDecisions(decisions, ...planDecisionKinds);
  return JSON.stringify([
    planEngine,
    readingKeyOf(painting),
    planWishes(decisions, box, air),
    over.map(({ id: _id, at: _at, ...what }) => what),
  ]);
}
