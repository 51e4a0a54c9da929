import { outerBorders } from '../../reading/edges/slot-borders.ts';
import type { Border } from '../../reading/reading.ts';
import { capitalize, joinWords } from '../../words/numbers.ts';
import type { PlanFacts, SolvedWash } from '../plan-facts.ts';
import {
  bothSides,
  longestNamed,
  meetHere,
  sideOf,
  type WashEdge,
  washEdges,
  whereIs,
} from './wash-edges.ts';

/** The line is kept between two colours where this share and length of it is crisp, mm (own). */
const crispEnough = 0.6;
const crispMm = 40;
const mostOnPassageLine = 2;

/**
 * Where ground and subject, painted together, meet crisply in two colours of one wash that no `later` one parts:
 * a sentence that says to stop there; empty where they do not.
 */
export function adviseOnPassageLine(
  facts: PlanFacts,
  slots: readonly number[],
  later: readonly SolvedWash[],
): string {
  const { reading, slots: all, paints } = facts;
  // Of one paint there are no two colours.
  if (paints.length < 2) return '';
  const goesOn = new Set(later.flatMap((wash) => wash.slots));
  const ends = new Set(slots.filter((slot) => !goesOn.has(slot)));
  const named = longestNamed(
    reading.borders.flatMap(({ a, b, lengthMm, soft, lost }) => {
      const share = Math.max(0, 1 - soft - lost);
      const across = reading.slots[a]?.passage !== reading.slots[b]?.passage;
      const apart = ends.has(a) && ends.has(b) && all[a]?.family !== all[b]?.family;
      const crisp = share >= crispEnough && share * lengthMm >= crispMm;
      if (!across || !apart || !crisp) return [];
      return [[joinWords(bothSides(facts, a, b)), share * lengthMm] as const];
    }),
    mostOnPassageLine,
  );
  return named.length > 0
    ? `The line is crisp between ${named.join(', and between ')}: stop at it, and leave a hair of paper dry there.`
    : '';
}

/** Edges named in one sentence at the most; along the line of the passages one fewer (own). */
const mostNamed = 3;
/** From this share on one of their borders is named as soft. */
const softEnough = 0.4;

interface Meeting {
  readonly words: string;
  readonly hardMm: number;
  readonly lengthMm: number;
}

/**
 * The crisp edges of a wash on wet paper, where the water has to stop: colours that meet mostly hard at its
 * border, none of whose borders is soft or decided by her. Empty where there are none.
 */
function crispOnWet(
  facts: PlanFacts,
  slots: readonly number[],
  decided: readonly WashEdge[],
): string {
  const hers = new Set(decided.map(({ edge }) => `${edge.a}/${edge.b}`));
  const inside = new Set(slots);
  const meetings = new Map<string, Meeting>();
  const soft = new Set<string>();
  for (const { a, b, lengthMm, ...border } of outerBorders(facts.reading, slots)) {
    const [own, other] = inside.has(a) ? [a, b] : [b, a];
    const key = [sideOf(facts, own), sideOf(facts, other)].sort().join('/');
    if (hers.has(`${a}/${b}`) || border.soft >= softEnough) soft.add(key);
    const before = meetings.get(key);
    meetings.set(key, {
      words: before?.words ?? bothSides(facts, own, other).join(' against '),
      hardMm: (before?.hardMm ?? 0) + lengthMm * Math.max(0, 1 - border.soft - border.lost),
      lengthMm: (before?.lengthMm ?? 0) + lengthMm,
    });
  }
  const named = longestNamed(
    [...meetings].flatMap(([key, { words, hardMm, lengthMm }]) =>
      soft.has(key) || hardMm < crispMm || hardMm < crispEnough * lengthMm
        ? []
        : [[words, hardMm] as const],
    ),
    mostNamed,
  );
  return named.length > 0
    ? `These edges stay crisp, so stop the water short of them: ${named.join('; ')}.`
    : '';
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

/** Edges she wants lost into what this wash does not paint; empty where there are none. */
function runOutWhere(facts: PlanFacts, decided: readonly WashEdge[]): string {
  const named = longestNamed(
    decided
      .filter(({ kind, inside }) => kind === 'lost' && !inside)
      .map((one) => {
        const [own, other] = bothSides(facts, one.own, one.other);
        return [
          `let ${own} run out into ${other}${whereIs(facts, one)}`,
          one.edge.lengthMm,
        ] as const;
      }),
    mostNamed,
  );
  return named.length > 0 ? `${capitalize(named.join('; '))}.` : '';
}

/** What is painted in one go. */
interface Merged {
  /** 'the dull green and the brown', the longest first, those she has decided before all others. */
  readonly pairs: readonly string[];
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
    lost.map((one) => {
      const pair = joinWords(bothSides(facts, one.own, one.other));
      return [`${pair}${whereIs(facts, one)}`, one.edge.lengthMm] as const;
    }),
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
  const seen = longestNamed(
    measured.map((border) => [
      joinWords(bothSides(facts, border.a, border.b)),
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

const against = (facts: PlanFacts, decided: WashEdge): readonly [string, number] => {
  const [one, two] = bothSides(facts, decided.own, decided.other);
  return [`${one} against ${two}${whereIs(facts, decided)}`, decided.edge.lengthMm];
};

/** Softness as measured: what she has decided is named by itself. */
function measuredSoftMm(border: Border, decided: readonly WashEdge[]): number {
  const hers = decided
    .filter(({ kind, edge }) => kind === 'soft' && edge.a === border.a && edge.b === border.b)
    .reduce((sum, { edge }) => sum + edge.lengthMm, 0);
  return border.lengthMm * border.soft - hers;
}

function softSentence(facts: PlanFacts, slots: readonly number[], decided: readonly WashEdge[]) {
  const hers = longestNamed(
    decided.filter(({ kind }) => kind === 'soft').map((one) => against(facts, one)),
    mostNamed,
  );
  const inside = new Set(slots);
  const measured = outerBorders(facts.reading, slots).flatMap((border) => {
    const softMm = measuredSoftMm(border, decided);
    if (softMm < shortestSoftMm || softMm < softEnough * border.lengthMm) return [];
    const [own, other] = inside.has(border.a) ? [border.a, border.b] : [border.b, border.a];
    const one = sideOf(facts, own);
    const two = sideOf(facts, other);
    return [[one === two ? `within ${one}` : `${one} against ${two}`, softMm] as const];
  });
  const named = [...hers, ...longestNamed(measured, mostNamed - hers.length)];
  if (named.length === 0) return '';
  return `While it shines, soften these edges with a clean, barely damp brush: ${named.join('; ')}.`;
}

/** Edges she wants sharp among the others; water would run over them. */
function crispSentence(facts: PlanFacts, decided: readonly WashEdge[], wet: boolean): string {
  const crisp = decided.filter(({ kind }) => kind === 'hard' || kind === 'found');
  const named = longestNamed(
    crisp.map((one) => against(facts, one)),
    mostNamed,
  );
  if (named.length === 0) return '';
  const stop = wet ? ' Stop the water short of them.' : '';
  return `Leave crisp: ${named.join('; ')}.${stop}`;
}

/**
 * What becomes of the edges of a wash, in words: which strokes to soften while they shine (R8), those she
 * has decided first, then the longest soft borders; which to leave crisp; which to let run out. Edges lost
 * inside the wash are a technique of their own (merging). Empty where nothing of it is to be done.
 * `slots` is the very list of the wash, `wet` where it goes on wetted paper: then also which edges to keep
 * from the water.
 */
export function adviseOnEdges(facts: PlanFacts, slots: readonly number[], wet = false): string {
  const decided = washEdges(facts, slots);
  return [
    softSentence(facts, slots, decided),
    crispSentence(facts, decided, wet),
    wet ? crispOnWet(facts, slots, decided) : '',
    runOutWhere(facts, decided),
  ]
    .filter(Boolean)
    .join(' ');
}
