import type { PassagesChoice } from '../../../app/model/passages-choice.ts';
import type { Border } from '../../../app/model/reading.ts';
import type { Slot } from '../../../app/model/slot.ts';
import { softShare } from './outer-borders.ts';
import { isMostlyLost, parted } from './passage-line.ts';
import type { PlanFacts } from './plan-facts.ts';

export interface ProposedPassages {
  readonly order: PassagesChoice;
  /** A sentence. */
  readonly why: string;
  /** The subject is the lighter: a ground painted after it is cut round it (R20). */
  readonly subjectLighter: boolean;
}

/** A ground softer than the subject by this share of its borders is painted first (own figure). */
const clearlySofter = 0.15;
/** So much lighter, planned L*, and a passage goes first (own figure). */
const clearlyLighter = 5;

type Facts = Pick<PlanFacts, 'reading' | 'slots'>;

/** The slots as planned, each in the passage it has in the picture, however it is painted. */
const inPicture = ({ reading, slots }: Facts): Slot[] =>
  slots.map((slot, i) => ({ ...slot, passage: reading.slots[i]?.passage ?? slot.passage }));

/** Both ground and subject have something to paint. */
const isParted = (slots: readonly Slot[]): boolean =>
  parted.every((name) =>
    slots.some(({ passage, reserve, share }) => passage === name && !reserve && share > 0),
  );

function inside(borders: readonly Border[], slots: readonly Slot[], passage: string): Border[] {
  return borders.filter(
    ({ a, b }) => slots[a]?.passage === passage && slots[b]?.passage === passage,
  );
}

function meanLightness(slots: readonly Slot[], passage: string): number {
  const own = slots.filter((slot) => slot.passage === passage && !slot.reserve);
  const area = own.reduce((sum, { share }) => sum + share, 0);
  return own.reduce((sum, { share, target }) => sum + share * target[0], 0) / Math.max(1e-9, area);
}

/**
 * Together where their line is mostly lost. Else ground first where it is soft and the subject crisp; else the
 * lighter passage, so that the darker one sets the edge between them; else the ground. Common practice, no source
 * (R18). Null where not both have something to paint.
 */
export function proposedPassages(facts: Facts): ProposedPassages | null {
  const slots = inPicture(facts);
  if (!isParted(slots)) return null;
  const { borders } = facts.reading;
  const lighter = meanLightness(slots, 'subject') - meanLightness(slots, 'ground');
  const subjectLighter = lighter > clearlyLighter;
  if (isMostlyLost(facts.reading)) {
    return {
      order: 'together',
      why: 'Ground and subject together: most of the line between them is lost.',
      subjectLighter,
    };
  }
  const groundFirst = (why: string): ProposedPassages => ({
    order: 'ground first',
    why: `Ground first: ${why}.`,
    subjectLighter,
  });
  const softer =
    softShare(inside(borders, slots, 'ground')) - softShare(inside(borders, slots, 'subject'));
  if (softer > clearlySofter) return groundFirst('it is soft and the subject crisp');
  if (subjectLighter) {
    return {
      order: 'subject first',
      why: 'Subject first: it is the lighter; the darker ground is then cut round it.',
      subjectLighter,
    };
  }
  if (lighter < -clearlyLighter) return groundFirst('it is the lighter, the subject sets the edge');
  return groundFirst('neither is softer or lighter, and the subject is easier to place on it');
}
