import type { Edge } from './edge.ts';
import type { EdgeWish } from './edge-wishes.ts';
import { kindOnSheet } from './kind-on-sheet.ts';
import { nearestEdge } from './nearest-edge.ts';
import { isNearlyAllHard } from './nearly-all-hard.ts';
import type { Decision } from './painting.ts';
import type { Border, Reading } from './reading.ts';
import type { Reference } from './reference.ts';
import { standingDecisions } from './standing-decisions.ts';
import { placeInCut } from './stroke-on-photo.ts';

/** A decision rests where no edge comes this near to its place, as a share of the long side. */
export const edgeReach = 0.02;

type Cut = Pick<Reference, 'crop' | 'sheet'>;

/** Her wishes by the edges they fall on; the last on an edge counts. */
function wishesOn(
  edges: readonly Edge[],
  decisions: readonly Decision[],
  cut: Cut,
  size: Reading['raster'],
): ReadonlyMap<number, EdgeWish> {
  const wishes = new Map<number, EdgeWish>();
  for (const { place, wish } of standingDecisions(decisions, 'edge')) {
    const near = nearestEdge(edges, placeInCut(cut, place), size, edgeReach);
    if (!near) continue;
    if (wish) wishes.set(near.index, wish);
    else wishes.delete(near.index);
  }
  return wishes;
}

const within = (share: number): number => Math.min(1, Math.max(0, share));

/** A border's soft and lost length with the decided edges along it counted as what they are to be. */
function decidedBorder(border: Border, decided: readonly Edge[]): Border {
  let { soft, lost } = border;
  for (const edge of decided) {
    const share = border.lengthMm > 0 ? edge.lengthMm / border.lengthMm : 0;
    const now = kindOnSheet(edge);
    soft += share * (Number(now === 'soft') - Number(edge.kind === 'soft'));
    lost += share * (Number(now === 'lost') - Number(edge.kind === 'lost'));
  }
  return { ...border, soft: within(soft), lost: within(lost) };
}

/**
 * The reading with its edges and borders as she wants them on the sheet. A decision finds the edge that
 * comes nearest to its place of the photo, whatever the sheet or the reading; one that finds none rests.
 */
export function decidedEdges(reading: Reading, decisions: readonly Decision[], cut: Cut): Reading {
  const { edges } = reading;
  if (!edges) return reading;
  const wishes = wishesOn(edges, decisions, cut, reading.raster);
  if (wishes.size === 0) return reading;
  const decided = edges.map((edge, i): Edge => {
    const wish = wishes.get(i);
    return wish ? { ...edge, wish } : edge;
  });
  const byPair = new Map<string, Edge[]>();
  for (const edge of decided) {
    if (!edge.wish) continue;
    const pair = `${edge.a}/${edge.b}`;
    byPair.set(pair, [...(byPair.get(pair) ?? []), edge]);
  }
  const borders = reading.borders.map((border) => {
    const along = byPair.get(`${border.a}/${border.b}`);
    return along ? decidedBorder(border, along) : border;
  });
  const warnings = isNearlyAllHard(decided, reading.sheet)
    ? reading.warnings
    : reading.warnings.filter(({ code }) => code !== 'all-hard');
  return { ...reading, edges: decided, borders, warnings };
}
