import type { Point } from './lab.ts';
import type { Decision } from './painting.ts';
import type { Reading } from './reading.ts';
import type { Reference } from './reference.ts';
import { standingDecisions } from './standing-decisions.ts';
import { placeInCut } from './stroke-on-photo.ts';
import { isSmallWhite, type White, type WhiteWay } from './whites.ts';

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
  whites.forEach(({ at, shortSideMm }, i) => {
    const right = ((at[0] - x) * sheet.widthMm) / longSide;
    const away = Math.hypot(right, ((at[1] - y) * sheet.heightMm) / longSide);
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
