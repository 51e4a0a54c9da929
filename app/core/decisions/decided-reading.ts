import type { Point } from '../colour/lab.ts';
import { type Edge, type EdgeWish, isNearlyAllHard, kindOnSheet } from '../reading/edges/edge.ts';
import { nearestEdge } from '../reading/edges/place-on-edge.ts';
import { stretchesOf, wholeEdges } from '../reading/edges/whole-edges.ts';
import type { Border, Reading } from '../reading/reading.ts';
import { isSmallWhite, type White, type WhiteWay } from '../reading/whites/whites.ts';
import { placeInCut } from '../reference/photo-stroke.ts';
import type { Reference } from '../reference/reference.ts';
import type { Decision, Painting } from './painting.ts';
import { standingDecisions } from './standing-decisions.ts';

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
  const standing = standingDecisions(decisions, 'edge');
  const joined = standing.some(({ whole }) => whole) ? wholeEdges(edges, size) : null;
  for (const { place, wish, whole } of standing) {
    const near = nearestEdge(edges, placeInCut(cut, place), size, edgeReach);
    if (!near) continue;
    for (const index of whole && joined ? stretchesOf(joined, near.index) : [near.index]) {
      if (wish) wishes.set(index, wish);
      else wishes.delete(index);
    }
  }
  return wishes;
}

const within = (share: number): number => Math.min(1, Math.max(0, share));

/** A border's soft and lost length with the decided edges along it counted as what they are to be. */
function decidedBorder(border: Border, decided: readonly Edge[]): Border {
  let { soft, lost } = border;
  for (const edge of decided) {
    const share = border.lengthMm > 0 ? edge.lengthMm / border.lengthMm : 0;
    const onSheet = kindOnSheet(edge);
    soft += share * (Number(onSheet === 'soft') - Number(edge.kind === 'soft'));
    lost += share * (Number(onSheet === 'lost') - Number(edge.kind === 'lost'));
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

/** A white whose middle lies further from the place she touched is another one; share of the long side. */
const nearEnough = 0.06;

/** The white whose middle is nearest to a place of the cut-out; -1 where none is near enough. */
function nearestWhite(
  { whites = [], sheet }: Pick<Reading, 'whites' | 'sheet'>,
  [x, y]: Point,
): number {
  const longSide = Math.max(sheet.widthMm, sheet.heightMm);
  let nearest = -1;
  let least = Number.POSITIVE_INFINITY;
  whites.forEach(({ at: place, shortSideMm }, i) => {
    const right = ((place[0] - x) * sheet.widthMm) / longSide;
    const away = Math.hypot(right, ((place[1] - y) * sheet.heightMm) / longSide);
    // The middle of a large white may move with another reading.
    const within = Math.max(nearEnough, shortSideMm / 2 / longSide);
    if (away > within || away >= least) return;
    least = away;
    nearest = i;
  });
  return nearest;
}

/** One for all small whites, or the white it was said of; a later decision replaces an earlier one. */
const isMeant = (white: White, i: number, nearest: number | null): boolean =>
  nearest === null ? isSmallWhite(white) : i === nearest;

/**
 * The reading with the ways she chose for its whites. Decisions are found again by their place; one
 * whose white is not there (cut away, painted over) rests.
 */
export function decidedWhites(
  reading: Reading,
  decisions: readonly Decision[],
  cut: Pick<Reference, 'crop' | 'sheet'>,
): Reading {
  const { whites } = reading;
  const chosen = standingDecisions(decisions, 'white-way');
  if (!whites || chosen.length === 0) return reading;
  const ways = new Map<number, WhiteWay | null>();
  for (const { place, way } of chosen) {
    const nearest = place && nearestWhite(reading, placeInCut(cut, place));
    whites.forEach((white, i) => {
      if (isMeant(white, i, nearest)) ways.set(i, way);
    });
  }
  return {
    ...reading,
    whites: whites.map((white, i) => {
      const way = ways.get(i);
      return way ? { ...white, way, decided: true } : white;
    }),
  };
}

/** The reading as the plan is to follow it: with her decisions that need no new reading. */
export const decidedReading = (
  reading: Reading,
  { decisions, reference }: Pick<Painting, 'decisions' | 'reference'>,
): Reading => decidedEdges(decidedWhites(reading, decisions, reference), decisions, reference);
