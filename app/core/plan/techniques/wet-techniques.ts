import type { Consistency } from '../../paint/consistency.ts';
import { type Side, sideTowards } from '../../raster/size.ts';
import { otherSide, wayRound } from '../../reading/edges/slot-borders.ts';
import type { MeetingSaid } from '../../words/plan/names.ts';
import { mergedWhere } from '../edges/edge-advice.ts';
import { bothSides, longestNamed, meetHere, sideOf, washEdges } from '../edges/wash-edges.ts';
import { isTextured } from '../steps/finishing-steps.ts';
import {
  mixAtSlot,
  slotAt,
  type TechniqueDetector,
  type WashInHand,
} from './technique-proposal.ts';
import { whileItShines } from './wetness-windows.ts';

/** A slope over this many L* that a plane explains this well, in one shape of this share (own). */
const sloping = { lightness: 8, fit: 0.5, share: 0.08 } as const;
/** Two values of one colour that run into each other softly, their middles this far apart (own). */
const running = { soft: 0.5, apart: 0.2, each: 0.04, share: 0.12 } as const;

/** A shape that gets stronger to one side. */
interface Grading {
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

/** The graded shapes of a wash, largest first; a dry-brushed wash has none. */
export function gradingsOf(wash: WashInHand): Grading[] {
  if (wash.draft.technique === 'dry brush') return [];
  return [...slopingSlots(wash), ...runningPairs(wash)].sort(
    (one, other) => other.share - one.share || (one.slots[0] ?? 0) - (other.slots[0] ?? 0),
  );
}

/** A large shape that slopes from light to dark is laid so, from the strong side (common practice, no source). */
export const gradedWash: TechniqueDetector = (wash) => {
  const [grading] = gradingsOf(wash);
  if (!grading) return null;
  const { strong, slots, share } = grading;
  return {
    share,
    smallTechnique: {
      technique: 'graded wash',
      text: {
        say:
          wash.draft.technique === 'wet-in-wet' ? 'technique/graded-wet' : 'technique/graded-dry',
        shape: sideOf(wash.facts, slots[0]),
        strong,
      },
      paper: wash.draft.paper,
      minutes: whileItShines(wash.draft),
    },
  };
};

/** A lost edge inside a wash: both sides are painted in one go. */
export const merging: TechniqueDetector = (wash) => {
  const { facts, draft } = wash;
  if (draft.technique === 'dry brush') return null;
  const graded = gradingsOf(wash).map((one) => one.slots);
  const decided = washEdges(facts, draft.slots);
  const { pairs, hers, slots } = mergedWhere(facts, draft.slots, decided, graded);
  if (pairs.length === 0) return null;
  return {
    share: [...new Set(slots)].reduce((sum, i) => sum + slotAt(wash, i).share, 0),
    hers: hers > 0,
    smallTechnique: {
      technique: 'merging',
      text: { say: 'technique/merging', edges: pairs, always: Math.max(1, hers) },
      paper: 'shiny',
      minutes: whileItShines(draft),
    },
  };
};

/** Soft along most of the way, inside a shape at least twice as large, worth the brush (own). */
const charged = { soft: 0.6, inside: 0.5, larger: 2, lengthMm: 40, share: 0.005 } as const;

const ladder: readonly Consistency[] = ['tea', 'coffee', 'milk', 'cream', 'butter'];

/**
 * A second colour that lies softly inside a larger shape of the same wash is dropped into it wet; never one
 * thinner than what is there (R6).
 */
export const charging: TechniqueDetector = (wash) => {
  const { facts, draft, painted } = wash;
  if (draft.technique === 'glaze' || draft.technique === 'dry brush') return null;
  // With a single paint there is no second colour to drop in.
  if (facts.paints.length < 2) return null;
  const { borders } = facts.reading;
  const found = [...painted].flatMap((inner) => {
    const own = slotAt(wash, inner);
    if (own.share < charged.share || isTextured(own, wash.sheetMm2)) return [];
    const round = wayRound(borders, inner);
    return round.borders.flatMap((border) => {
      const outer = otherSide(border, inner);
      const around = facts.slots[outer];
      if (!painted.has(outer) || around?.passage !== own.passage) return [];
      if (around.family === own.family || around.share < charged.larger * own.share) return [];
      if (border.soft < charged.soft || border.lengthMm < charged.lengthMm) return [];
      if (border.lengthMm < charged.inside * round.lengthMm) return [];
      if (!meetHere(facts, draft.slots, inner, outer)) return [];
      const [drop, outside] = [mixAtSlot(wash, inner), mixAtSlot(wash, outer)];
      if (!drop || !outside || drop.puddle === outside.puddle) return [];
      if (ladder.indexOf(drop.consistency) < ladder.indexOf(outside.consistency)) return [];
      return [{ inner, outer, lengthMm: border.lengthMm, share: own.share }];
    });
  });
  if (found.length === 0) return null;
  const edges = longestNamed<MeetingSaid>(
    found.map(({ inner, outer, lengthMm }) => [
      { say: 'meeting/into', ...bothSides(facts, inner, outer) },
      lengthMm,
    ]),
    2,
  );
  return {
    share: found.reduce((sum, { share }) => sum + share, 0),
    smallTechnique: {
      technique: 'charging',
      text: { say: 'technique/charging', edges },
      paper: 'shiny',
      minutes: whileItShines(draft),
    },
  };
};
