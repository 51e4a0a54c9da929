import type { Border } from '../../../app/model/reading.ts';
import { softShare } from './outer-borders.ts';
import type { PlanFacts } from './plan-facts.ts';

/** Which passage is painted first, and the sentence that says why; empty where there is only one. */
export interface PassageOrder {
  readonly passages: PlanFacts['passages'];
  readonly why: string;
  /** The one painted last is the darker ground: it is cut round the subject (R20). */
  readonly cutRound: boolean;
}

/** A ground softer than the subject by this share of its borders is painted first (own figure). */
const clearlySofter = 0.15;
/** So much lighter, planned L*, and a passage goes first (own figure). */
const clearlyLighter = 5;

function inside({ reading, slots }: PlanFacts, passage: string): Border[] {
  return reading.borders.filter(
    ({ a, b }) => slots[a]?.passage === passage && slots[b]?.passage === passage,
  );
}

function meanLightness({ slots }: PlanFacts, passage: string): number {
  const own = slots.filter((slot) => slot.passage === passage && !slot.reserve);
  const area = own.reduce((sum, { share }) => sum + share, 0);
  return own.reduce((sum, { share, target }) => sum + share * target[0], 0) / Math.max(1e-9, area);
}

/**
 * Ground first where it is soft and the subject crisp; else the lighter passage, so that the darker one
 * sets the edge between them; else the ground. Common practice, no source (R18).
 */
export function passageOrder(facts: PlanFacts): PassageOrder {
  const ground = facts.passages.find(({ passage }) => passage === 'ground');
  const subject = facts.passages.find(({ passage }) => passage === 'subject');
  if (!ground || !subject) return { passages: facts.passages, why: '', cutRound: false };
  const groundFirst = (why: string): PassageOrder => ({
    passages: [ground, subject],
    why: `Ground first: ${why}.`,
    cutRound: false,
  });
  const softer = softShare(inside(facts, 'ground')) - softShare(inside(facts, 'subject'));
  if (softer > clearlySofter) return groundFirst('it is soft and the subject crisp');
  const lighter = meanLightness(facts, 'subject') - meanLightness(facts, 'ground');
  if (lighter > clearlyLighter) {
    return {
      passages: [subject, ground],
      why: 'Subject first: it is the lighter; the darker ground is then cut round it.',
      cutRound: true,
    };
  }
  if (lighter < -clearlyLighter) return groundFirst('it is the lighter, the subject sets the edge');
  return groundFirst('neither is softer or lighter, and the subject is easier to place on it');
}
