import type { Point } from '../colour/lab.ts';
import type { Edge, EdgeWish } from '../reading/edges/edge.ts';
import { nearestOnEdge } from '../reading/edges/place-on-edge.ts';
import type { Reading } from '../reading/reading.ts';
import {
  lengthInWords,
  openWithCount,
  pluralize,
  valuesApart,
  widthInWords,
} from '../words/numbers.ts';

export interface EdgeProposal {
  /** Index into the reading's edges. */
  readonly edge: number;
  readonly wish: Exclude<EdgeWish, 'keep'>;
  /** Why, with the figures that led to it: one sentence. */
  readonly why: string;
}

export interface EdgeProposals {
  /** What is to be done first; empty when there is nothing in the way. */
  readonly first: string;
  /** Edges near the centre of interest whose softness may be the lens; empty without any. */
  readonly lens: string;
  readonly list: readonly EdgeProposal[];
}

/**
 * When an edge is proposed for what (own), after common practice (hard edges at the centre of
 * interest, few; soft and lost ones elsewhere): no source gives numbers. Distances are shares of the
 * long side, from the centre of interest to the nearest spot of the edge.
 */
export const proposalLimits = {
  most: 7,
  mostOfOneWish: 4,
  /** Nearer than this is at the centre of interest: nothing is softened or lost there. */
  near: 0.15,
  /** From here on an edge is away from it. */
  far: 0.25,
  /** Shorter edges are not worth a stroke of their own, mm on the sheet. */
  leastMm: 12,
  /** Hard edges under this difference are slight enough to go, L*. */
  slight: 14,
  /** Sides planned nearer to each other than this may as well be one, L*. */
  similar: 8,
  /** A soft edge from this difference on could be sharp, L*. */
  plain: 10,
} as const;

type Facts = Pick<Reading, 'slots' | 'raster' | 'sheet' | 'warnings'> & {
  readonly edges?: readonly Edge[] | undefined;
};

interface Candidate extends EdgeProposal {
  readonly score: number;
}

const askForFocus = {
  'all-hard':
    'Nearly every edge is hard. Set your centre of interest first: then edges away from it can be softened or lost.',
  usual: 'Set your centre of interest, and edges away from it can be proposed to soften.',
} as const;

const plannedApart = ({ slots }: Facts, { a, b }: Edge): number => {
  const [one, two] = [slots[a]?.target[0], slots[b]?.target[0]];
  return one === undefined || two === undefined ? Number.POSITIVE_INFINITY : Math.abs(one - two);
};

/** Why an edge away from the focus may go; null where it should not. */
function whyLose(facts: Facts, edge: Edge): string | null {
  const apart = plannedApart(facts, edge);
  if (edge.kind === 'found' || (edge.kind === 'hard' && edge.contrast < proposalLimits.slight))
    return `only ${valuesApart(edge.contrast)} of difference`;
  if (edge.kind === 'hard' && apart < proposalLimits.similar)
    return `both sides are planned ${valuesApart(apart)} apart`;
  return null;
}

/** Soft but plain, long enough for a stroke, and not meant as a graded wash. */
const couldBeSharp = ({ kind, contrast, lengthMm, graded }: Edge): boolean =>
  kind === 'soft' &&
  contrast >= proposalLimits.plain &&
  lengthMm >= proposalLimits.leastMm &&
  !graded;

function candidateOf(
  facts: Facts,
  index: number,
  edge: Edge,
  way: number | null,
): Candidate | null {
  const { near, far, leastMm } = proposalLimits;
  if (edge.lengthMm < leastMm) return null;
  const longMm = Math.max(facts.sheet.widthMm, facts.sheet.heightMm);
  const long = lengthInWords(edge.lengthMm);
  const weight = edge.lengthMm * edge.contrast;
  const from = way === null ? '' : `${lengthInWords(way * longMm)} from your centre of interest, `;
  if (way === null || way >= far) {
    const lose = whyLose(facts, edge);
    const score = weight * (way ?? 1);
    if (lose) {
      const why = `${from}${long} long, ${lose}: it need not be seen.`;
      return { edge: index, wish: 'lose', why, score };
    }
    if (way === null || edge.kind !== 'hard') return null;
    const why = `${from}${long} long, hard, ${valuesApart(edge.contrast)} of difference: it draws the eye away.`;
    return { edge: index, wish: 'soften', why, score };
  }
  if (way > near || !couldBeSharp(edge) || edge.outOfFocus) return null;
  const why = `At your centre of interest, ${long} long, ${valuesApart(edge.contrast)} of difference, but spread over ${widthInWords(edge.widthMm)}.`;
  return { edge: index, wish: 'sharpen', why, score: weight * (1 - way / (2 * near)) };
}

function lensSentence(edges: readonly Edge[], ways: readonly number[]): string {
  const { near } = proposalLimits;
  const count = edges.filter(
    (edge, i) => edge.outOfFocus && couldBeSharp(edge) && ways[i] <= near,
  ).length;
  if (count === 0) return '';
  const which = `${openWithCount(count, 'edge')} there ${pluralize(count, 'is', 'are')}`;
  const them = pluralize(count, 'it', 'them');
  return `${which} out of focus: the lens may have made ${them} soft. Look at the subject before you decide.`;
}

/**
 * Which edges to soften, lose or sharpen for the sake of the centre of interest (0..1 of the cut-out;
 * null: none set yet), by length x difference x distance. At most seven; those she has decided take
 * their places in the ranking, so that a list worked through ends. Deterministic.
 */
export function edgeProposals(facts: Facts, focus: Point | null): EdgeProposals {
  const edges = facts.edges ?? [];
  const ways = focus
    ? edges.map((edge) => nearestOnEdge(edge, focus, facts.raster).distance)
    : null;
  const ranked = edges
    .map((edge, i) => candidateOf(facts, i, edge, ways ? ways[i] : null))
    .filter((found) => found !== null)
    .sort((one, other) => other.score - one.score || one.edge - other.edge);
  const list: EdgeProposal[] = [];
  const counts = { soften: 0, lose: 0, sharpen: 0 };
  for (const { edge, wish, why } of ranked) {
    if (list.length === proposalLimits.most) break;
    if (++counts[wish] <= proposalLimits.mostOfOneWish) list.push({ edge, wish, why });
  }
  const allHard = facts.warnings.some(({ code }) => code === 'all-hard');
  return {
    first: focus ? '' : askForFocus[allHard ? 'all-hard' : 'usual'],
    lens: ways ? lensSentence(edges, ways) : '',
    list: list.filter(({ edge }) => edges[edge]?.wish === undefined),
  };
}
