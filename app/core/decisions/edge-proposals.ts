import type { Point } from '../colour/lab.ts';
import { contrastAway, type LightnessMap } from '../reading/edges/contrast-away.ts';
import type { Edge, EdgeWish } from '../reading/edges/edge.ts';
import { nearestOnEdge } from '../reading/edges/place-on-edge.ts';
import { joinStretches, stretchesOf, wholeEdges } from '../reading/edges/whole-edges.ts';
import type { Reading } from '../reading/reading.ts';

export interface EdgeProposal {
  /** Index into the reading's edges of a stretch of it: the whole edge is meant. */
  readonly edge: number;
  readonly wish: Exclude<EdgeWish, 'keep'>;
  /** What led to it: its length on the sheet, how far it lies from the centre of interest, mm; contrasts in L*. */
  readonly why: {
    readonly lengthMm: number;
    readonly awayMm: number;
    /** The greatest difference along it, or beside it, where it can disappear. */
    readonly contrast: number;
    /** Over which it changes. */
    readonly widthMm: number;
  };
}

export interface EdgeProposals {
  /** What is to be done first: her centre of interest touched, where nearly all is hard or as a rule; null: nothing. */
  readonly first: 'all-hard' | 'usual' | null;
  /** How many edges near the centre of interest may be soft by the lens only. */
  readonly lens: number;
  /** Empty until she has said where the eye should rest. */
  readonly list: readonly EdgeProposal[];
}

/**
 * When an edge is proposed for what (own), after common practice (hard edges at the centre of
 * interest, few; soft and lost ones elsewhere): no source gives numbers. Distances are shares of the
 * long side, from the centre of interest to the nearest spot of the edge.
 */
export const proposalLimits = {
  most: 5,
  mostOfOneWish: 3,
  /** Nearer than this is at the centre of interest: nothing is softened or lost there. */
  near: 0.15,
  /** From here on an edge is away from it. */
  far: 0.25,
  /** Shorter edges are not worth a stroke of their own, mm on the sheet. */
  leastMm: 12,
  /** Edges under this difference are slight enough to go, L*: anywhere along them, and some way off their line. */
  slight: 14,
  /** So far off the line the eye takes its sides, mm on the sheet. */
  awayMm: 4,
  /** A soft edge from this difference on could be sharp, L*. */
  plain: 10,
} as const;

type Facts = Pick<Reading, 'raster' | 'sheet' | 'warnings'> & {
  readonly edges?: readonly Edge[] | undefined;
};

interface Candidate extends EdgeProposal {
  readonly score: number;
}

/** A whole edge as it is looked at. */
interface Whole {
  /** Index of its longest stretch. */
  readonly index: number;
  readonly edge: Edge;
  readonly stretches: readonly Edge[];
  /** To the centre of interest. */
  readonly way: number;
}

const longSideMm = ({ sheet }: Facts): number => Math.max(sheet.widthMm, sheet.heightMm);

/** The greatest difference an edge shows anywhere along it, or some way off its line; L*. */
function mostContrast({ stretches }: Whole, facts: Facts, lightness: LightnessMap | null): number {
  const along = stretches.map(({ contrast }) => contrast);
  if (!lightness) return Math.max(...along);
  const share = proposalLimits.awayMm / longSideMm(facts);
  const away = stretches.map((edge) => contrastAway(edge, lightness, share) ?? 0);
  return Math.max(...along, ...away);
}

/** Soft but plain, long enough for a stroke, and not meant as a graded wash. */
const couldBeSharp = ({ kind, contrast, lengthMm, graded }: Edge): boolean =>
  kind === 'soft' &&
  contrast >= proposalLimits.plain &&
  lengthMm >= proposalLimits.leastMm &&
  !graded;

function candidateOf(facts: Facts, whole: Whole, lightness: LightnessMap | null): Candidate | null {
  const { near, far, leastMm, slight } = proposalLimits;
  const { edge, index, way } = whole;
  if (edge.lengthMm < leastMm) return null;
  const { lengthMm, contrast, widthMm } = edge;
  const why = { lengthMm, awayMm: way * longSideMm(facts), contrast, widthMm };
  const weight = lengthMm * contrast;
  if (way >= far) {
    if (edge.kind !== 'hard' && edge.kind !== 'found') return null;
    const score = weight * way;
    const most = mostContrast(whole, facts, lightness);
    if (most < slight) return { edge: index, wish: 'lose', why: { ...why, contrast: most }, score };
    return edge.kind === 'hard' ? { edge: index, wish: 'soften', why, score } : null;
  }
  if (way > near || !couldBeSharp(edge) || edge.outOfFocus) return null;
  return { edge: index, wish: 'sharpen', why, score: weight * (1 - way / (2 * near)) };
}

const softByLens = (wholes: readonly Whole[]): number =>
  wholes.filter(
    ({ edge, way }) => edge.outOfFocus && couldBeSharp(edge) && way <= proposalLimits.near,
  ).length;

function wholesOf({ raster }: Facts, edges: readonly Edge[], focus: Point): Whole[] {
  const whole = wholeEdges(edges, raster);
  return [...new Set(whole)].map((first) => {
    const members = stretchesOf(whole, first);
    const stretches = members.map((i) => edges[i]);
    const index = members.reduce((best, i) =>
      edges[i].lengthMm > edges[best].lengthMm ? i : best,
    );
    const way = Math.min(...stretches.map((edge) => nearestOnEdge(edge, focus, raster).distance));
    return { index, edge: joinStretches(stretches), stretches, way };
  });
}

/**
 * Which whole edges to soften, lose or sharpen for the sake of the centre of interest (0..1 of the cut-out; null: none
 * set yet, and nothing is proposed), by length x difference x distance. At most five; those she has decided take their
 * places in the ranking, so that a list worked through ends. `lightness` of the picture, where it is at hand: none that
 * shows some way off its line is then proposed to be lost. Deterministic.
 */
export function edgeProposals(
  facts: Facts,
  focus: Point | null,
  lightness: LightnessMap | null = null,
): EdgeProposals {
  const edges = facts.edges ?? [];
  const allHard = facts.warnings.some(({ code }) => code === 'all-hard');
  if (!focus) return { first: allHard ? 'all-hard' : 'usual', lens: 0, list: [] };
  const wholes = wholesOf(facts, edges, focus);
  const ranked = wholes
    .map((whole) => candidateOf(facts, whole, lightness))
    .filter((found) => found !== null)
    .sort((one, other) => other.score - one.score || one.edge - other.edge);
  const list: EdgeProposal[] = [];
  const counts = { soften: 0, lose: 0, sharpen: 0 };
  for (const { edge, wish, why } of ranked) {
    if (list.length === proposalLimits.most) break;
    if (++counts[wish] <= proposalLimits.mostOfOneWish) list.push({ edge, wish, why });
  }
  return {
    first: null,
    lens: softByLens(wholes),
    list: list.filter(({ edge }) => edges[edge]?.wish === undefined),
  };
}
