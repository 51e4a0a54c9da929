import { outerBorders } from '../../reading/edges/slot-borders.ts';
import type { Border } from '../../reading/reading.ts';
import type { MeetingSaid } from '../../words/plan/names.ts';
import { saidKey } from '../../words/plan/said.ts';
import type { Said } from '../../words/plan/words.ts';
import type { PlanFacts, SolvedWash } from '../plan-facts.ts';
import {
  bothSides,
  isSameShape,
  longestNamed,
  meetHere,
  placeOfEdge,
  sideOf,
  type WashEdge,
  washEdges,
} from './wash-edges.ts';

/** The line is kept between two colours where this share and length of it is crisp, mm (own). */
const crispEnough = 0.6;
const crispMm = 40;
const mostOnPassageLine = 2;

/**
 * Where ground and subject, painted together, meet crisply in two colours of one wash that no `later` one parts:
 * a sentence that says to stop there; none where they do not.
 */
export function adviseOnPassageLine(
  facts: PlanFacts,
  slots: readonly number[],
  later: readonly SolvedWash[],
): Said[] {
  const { reading, slots: all, paints } = facts;
  // Of one paint there are no two colours.
  if (paints.length < 2) return [];
  const goesOn = new Set(later.flatMap((wash) => wash.slots));
  const ends = new Set(slots.filter((slot) => !goesOn.has(slot)));
  const edges = longestNamed<MeetingSaid>(
    reading.borders.flatMap(({ a, b, lengthMm, soft, lost }) => {
      const share = Math.max(0, 1 - soft - lost);
      const across = reading.slots[a]?.passage !== reading.slots[b]?.passage;
      const apart = ends.has(a) && ends.has(b) && all[a]?.family !== all[b]?.family;
      const crisp = share >= crispEnough && share * lengthMm >= crispMm;
      if (!across || !apart || !crisp) return [];
      return [[{ say: 'meeting/and', ...bothSides(facts, a, b) }, share * lengthMm] as const];
    }),
    mostOnPassageLine,
  );
  return edges.length > 0 ? [{ say: 'edges/line-crisp', edges }] : [];
}

/** Edges named in one sentence at the most; along the line of the passages one fewer (own). */
const mostNamed = 3;
/** From this share on one of their borders is named as soft. */
const softEnough = 0.4;

interface Meeting {
  readonly said: MeetingSaid;
  readonly hardMm: number;
  readonly lengthMm: number;
}

/**
 * The crisp edges of a wash on wet paper, where the water has to stop: colours that meet mostly hard at its
 * border, none of whose borders is soft or decided by her.
 */
function crispOnWet(
  facts: PlanFacts,
  slots: readonly number[],
  decided: readonly WashEdge[],
): Said[] {
  const hers = new Set(decided.map(({ edge }) => `${edge.a}/${edge.b}`));
  const inside = new Set(slots);
  const meetings = new Map<string, Meeting>();
  const soft = new Set<string>();
  for (const { a, b, lengthMm, ...border } of outerBorders(facts.reading, slots)) {
    const [own, other] = inside.has(a) ? [a, b] : [b, a];
    const key = [own, other]
      .map((i) => saidKey(sideOf(facts, i)))
      .sort()
      .join('/');
    if (hers.has(`${a}/${b}`) || border.soft >= softEnough) soft.add(key);
    const before = meetings.get(key);
    meetings.set(key, {
      said: before?.said ?? { say: 'meeting/against', ...bothSides(facts, own, other) },
      hardMm: (before?.hardMm ?? 0) + lengthMm * Math.max(0, 1 - border.soft - border.lost),
      lengthMm: (before?.lengthMm ?? 0) + lengthMm,
    });
  }
  const edges = longestNamed(
    [...meetings].flatMap(([key, { said, hardMm, lengthMm }]) =>
      soft.has(key) || hardMm < crispMm || hardMm < crispEnough * lengthMm
        ? []
        : [[said, hardMm] as const],
    ),
    mostNamed,
  );
  return edges.length > 0 ? [{ say: 'edges/stop-short', edges }] : [];
}

/** A border is named when this share of it is lost as measured, and this much of it, mm (own). */
const lostEnough = 0.6;
const shortestLostMm = 30;

/** Length lost as measured: what she has decided is named by itself. */
function measuredLostMm(border: Border, decided: readonly WashEdge[]): number {
  const hers = decided
    .filter(({ kind, edge }) => kind === 'lost' && edge.a === border.a && edge.b === border.b)
    .reduce((sum, { edge }) => sum + edge.lengthMm, 0);
  return border.lengthMm * border.lost - hers;
}

/** Edges she wants lost into what this wash does not paint. */
function runOutWhere(facts: PlanFacts, decided: readonly WashEdge[]): Said[] {
  const edges = longestNamed(
    decided
      .filter(({ kind, inside }) => kind === 'lost' && !inside)
      .map((one) => hersNamed(facts, one, 'meeting/run-out')),
    mostNamed,
  );
  return edges.length > 0 ? [{ say: 'edges/run-out', edges }] : [];
}

/** An edge of hers by its sides and where it lies, with its length. */
const hersNamed = (
  facts: PlanFacts,
  decided: WashEdge,
  say: 'meeting/run-out' | 'meeting/and' | 'meeting/against',
): readonly [MeetingSaid, number] => [
  { say, ...bothSides(facts, decided.own, decided.other), place: placeOfEdge(facts, decided) },
  decided.edge.lengthMm,
];

/** What is painted in one go. */
interface Merged {
  /** 'the dull green and the brown', the longest first, those she has decided before all others. */
  readonly pairs: readonly MeetingSaid[];
  /** How many of them she has decided. */
  readonly hers: number;
  /** Slots on either side. */
  readonly slots: readonly number[];
}

/**
 * Edges to lose between two shapes that are both painted in this wash: those she has decided, with where they
 * lie, then borders mostly lost in the photo. `slots` is the very list of the wash. Of the
 * `graded` runs of slots nothing is said here.
 */
export function mergedWhere(
  facts: PlanFacts,
  slots: readonly number[],
  decided: readonly WashEdge[],
  graded: readonly (readonly number[])[] = [],
): Merged {
  const lost = decided.filter(({ kind, inside }) => kind === 'lost' && inside);
  const hers = longestNamed(
    lost.map((one) => hersNamed(facts, one, 'meeting/and')),
    mostNamed,
  );
  const painted = new Set(slots);
  const measured = facts.reading.borders.filter((border) => {
    const { a, b } = border;
    const lostMm = measuredLostMm(border, decided);
    if (!painted.has(a) || !painted.has(b) || !meetHere(facts, slots, a, b)) return false;
    if (graded.some((run) => run.includes(a) && run.includes(b))) return false;
    return lostMm >= shortestLostMm && lostMm >= lostEnough * border.lengthMm;
  });
  const seen = longestNamed<MeetingSaid>(
    measured.map((border) => [
      { say: 'meeting/and', ...bothSides(facts, border.a, border.b) },
      measuredLostMm(border, decided),
    ]),
    mostNamed - hers.length,
  );
  return {
    pairs: [...hers, ...seen],
    hers: hers.length,
    slots: [...lost.map(({ edge }) => edge), ...measured].flatMap(({ a, b }) => [a, b]),
  };
}

/** Shorter stretches are not worth a word, mm on the sheet. */
const shortestSoftMm = 15;

/** Softness as measured: what she has decided is named by itself. */
function measuredSoftMm(border: Border, decided: readonly WashEdge[]): number {
  const hers = decided
    .filter(({ kind, edge }) => kind === 'soft' && edge.a === border.a && edge.b === border.b)
    .reduce((sum, { edge }) => sum + edge.lengthMm, 0);
  return border.lengthMm * border.soft - hers;
}

function softened(
  facts: PlanFacts,
  slots: readonly number[],
  decided: readonly WashEdge[],
): Said[] {
  const hers = longestNamed(
    decided
      .filter(({ kind }) => kind === 'soft')
      .map((one) => hersNamed(facts, one, 'meeting/against')),
    mostNamed,
  );
  const inside = new Set(slots);
  const measured = outerBorders(facts.reading, slots).flatMap(
    (border): (readonly [MeetingSaid, number])[] => {
      const softMm = measuredSoftMm(border, decided);
      if (softMm < shortestSoftMm || softMm < softEnough * border.lengthMm) return [];
      const [own, other] = inside.has(border.a) ? [border.a, border.b] : [border.b, border.a];
      const one = sideOf(facts, own);
      const two = sideOf(facts, other);
      const isOne = isSameShape(one, two);
      return [
        [isOne ? { say: 'meeting/within', one } : { say: 'meeting/against', one, two }, softMm],
      ];
    },
  );
  const edges = [...hers, ...longestNamed(measured, mostNamed - hers.length)];
  return edges.length === 0 ? [] : [{ say: 'edges/soften', edges }];
}

/** Edges she wants sharp among the others; water would run over them. */
function keptCrisp(facts: PlanFacts, decided: readonly WashEdge[], wet: boolean): Said[] {
  const edges = longestNamed(
    decided
      .filter(({ kind }) => kind === 'hard' || kind === 'found')
      .map((one) => hersNamed(facts, one, 'meeting/against')),
    mostNamed,
  );
  return edges.length === 0 ? [] : [{ say: 'edges/leave-crisp', edges, wet }];
}

/**
 * What becomes of the edges of a wash: which strokes to soften while they shine (R8), those she
 * has decided first, then the longest soft borders; which to leave crisp; which to let run out. Edges lost
 * inside the wash are a technique of their own (merging). Empty where nothing of it is to be done.
 * `slots` is the very list of the wash, `wet` where it goes on wetted paper: then also which edges to keep
 * from the water.
 */
export function adviseOnEdges(facts: PlanFacts, slots: readonly number[], wet = false): Said[] {
  const decided = washEdges(facts, slots);
  return [
    ...softened(facts, slots, decided),
    ...keptCrisp(facts, decided, wet),
    ...(wet ? crispOnWet(facts, slots, decided) : []),
    ...runOutWhere(facts, decided),
  ];
}
