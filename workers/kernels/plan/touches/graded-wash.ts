import {
  edgeOfBoard,
  oppositeSide,
  type Side,
  sideInWords,
  sideTowards,
} from '../../../../app/model/side.ts';
import { sideOf } from '../side-words.ts';
import { meetHere } from '../wash-edges.ts';
import type { CallFor } from './called.ts';
import { slotAt, type WashInHand } from './wash-in-hand.ts';
import { whileItShines } from './windows.ts';

/** A slope over this many L* that a plane explains this well, in one shape of this share (own figures). */
const sloping = { lightness: 8, fit: 0.5, share: 0.08 } as const;
/** Two values of one colour that run into each other softly, their middles this far apart (own figures). */
const running = { soft: 0.5, apart: 0.2, each: 0.04, share: 0.12 } as const;

/** A shape that gets stronger to one side. */
export interface Grading {
  /** One slot, or the lighter and the darker of two. */
  readonly slots: readonly number[];
  readonly share: number;
  /** Where it is strong. */
  readonly strong: Side;
}

const largestShare = (wash: WashInHand, i: number): number =>
  slotAt(wash, i).largestMm2 / wash.sheetMm2;

function slopingSlots(wash: WashInHand): Grading[] {
  return [...wash.finished].flatMap((i): Grading[] => {
    const { slope } = slotAt(wash, i);
    const share = largestShare(wash, i);
    if (!slope || share < sloping.share) return [];
    if (slope.lightness < sloping.lightness || slope.fit < sloping.fit) return [];
    return [{ slots: [i], share, strong: slope.towards }];
  });
}

function runningPairs(wash: WashInHand): Grading[] {
  const { facts, draft, painted } = wash;
  return facts.reading.borders.flatMap((border): Grading[] => {
    const { a, b } = border;
    if (!painted.has(a) || !painted.has(b) || border.soft + border.lost < running.soft) return [];
    const [one, two] = [slotAt(wash, a), slotAt(wash, b)];
    if (one.family !== two.family || one.passage !== two.passage || one.band === two.band)
      return [];
    const shares = [largestShare(wash, a), largestShare(wash, b)];
    const share = shares.reduce((sum, one) => sum + one, 0);
    if (Math.min(...shares) < running.each || share < running.share) return [];
    if (!meetHere(facts, draft.slots, a, b)) return [];
    const [light, dark] = one.band < two.band ? [one, two] : [two, one];
    if (!light.centre || !dark.centre) return [];
    const { widthMm, heightMm } = facts.reading.sheet;
    const x = (dark.centre[0] - light.centre[0]) * widthMm;
    const y = (dark.centre[1] - light.centre[1]) * heightMm;
    if (Math.hypot(x, y) < running.apart * Math.max(widthMm, heightMm)) return [];
    return [{ slots: one === light ? [a, b] : [b, a], share, strong: sideTowards(x, y) }];
  });
}

/** What of a wash is graded, the largest first. On dry brush nothing can be. */
export function gradingsOf(wash: WashInHand): Grading[] {
  if (wash.draft.technique === 'dry brush') return [];
  return [...slopingSlots(wash), ...runningPairs(wash)].sort(
    (one, other) => other.share - one.share || (one.slots[0] ?? 0) - (other.slots[0] ?? 0),
  );
}

/** A large shape that slopes from light to dark is laid so, from the strong side (common practice, no source). */
export const gradedWash: CallFor = (wash) => {
  const [grading] = gradingsOf(wash);
  if (!grading) return null;
  const { strong, slots, share } = grading;
  const name = sideOf(wash.facts, slots[0] as number);
  const from = sideInWords(strong);
  const wet = wash.draft.technique === 'wet-in-wet';
  const end = sideInWords(oppositeSide(strong));
  return {
    share,
    touch: {
      technique: 'graded wash',
      text: wet
        ? `Lay ${name} strong ${from}, thin ${end}; then raise ${edgeOfBoard(strong)} so that it runs even.`
        : `Begin ${name} strong ${from}, that edge of the board raised; more water at each stroke, thin ${end}.`,
      paper: wash.draft.paper,
      minutes: whileItShines(wash.draft),
    },
  };
};
