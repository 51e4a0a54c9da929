import type { Point } from '../colour/lab.ts';

/**
 * What one printed page holds of the drawing, mm: small enough for A4 (ISO 216, 210 x 297) and for
 * letter (216 x 279) with margins every printer keeps and room for words below.
 */
export const printWindow = { shortMm: 180, longMm: 230 } as const;

/** Neighbouring pages share this much, mm. */
export const overlapMm = 10;

/** One page: which part of the sheet it shows. */
export interface PrintTile {
  readonly n: number;
  /** From 1. */
  readonly column: number;
  readonly row: number;
  /** Upper left of what it shows, mm on the sheet; may lie outside it. */
  readonly leftMm: number;
  readonly topMm: number;
  /** Which of its sides another page lies against. */
  readonly beside: {
    readonly left: boolean;
    readonly right: boolean;
    readonly above: boolean;
    readonly below: boolean;
  };
}

/** A drawing cut into pages. */
export interface PrintTiles {
  /** What a page shows of the sheet is wider than high: it is printed turned by a quarter. */
  readonly turned: boolean;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly columns: number;
  readonly rows: number;
  readonly tiles: readonly PrintTile[];
}

const countOf = (sideMm: number, windowMm: number): number =>
  Math.max(1, Math.ceil((sideMm - overlapMm) / (windowMm - overlapMm)));

interface Size {
  readonly widthMm: number;
  readonly heightMm: number;
}

function cut(sheet: Size, turned: boolean): PrintTiles {
  const { shortMm, longMm } = printWindow;
  const [widthMm, heightMm] = turned ? [longMm, shortMm] : [shortMm, longMm];
  const columns = countOf(sheet.widthMm, widthMm);
  const rows = countOf(sheet.heightMm, heightMm);
  // The sheet lies in the middle of all pages, so that no page is left with a sliver.
  const spanX = widthMm + (columns - 1) * (widthMm - overlapMm);
  const spanY = heightMm + (rows - 1) * (heightMm - overlapMm);
  const tiles = Array.from({ length: columns * rows }, (_, i): PrintTile => {
    const [across, down] = [i % columns, Math.floor(i / columns)];
    return {
      n: i + 1,
      column: across + 1,
      row: down + 1,
      leftMm: across * (widthMm - overlapMm) - (spanX - sheet.widthMm) / 2,
      topMm: down * (heightMm - overlapMm) - (spanY - sheet.heightMm) / 2,
      beside: {
        left: across > 0,
        right: across < columns - 1,
        above: down > 0,
        below: down < rows - 1,
      },
    };
  });
  return { turned, widthMm, heightMm, columns, rows, tiles };
}

/** The pages a drawing of that size is printed on, upright or turned, whichever takes fewer. */
export function printTiles(sheet: Size): PrintTiles {
  const [upright, turned] = [cut(sheet, false), cut(sheet, true)];
  return turned.tiles.length < upright.tiles.length ? turned : upright;
}

/** Where the crosses of a page are, mm on the sheet: neighbours have the very same ones in common. */
export function registerMarks(
  { leftMm, topMm, beside }: PrintTile,
  { widthMm, heightMm }: Pick<PrintTiles, 'widthMm' | 'heightMm'>,
): Point[] {
  const inset = overlapMm / 2;
  const marks: Point[] = [];
  for (const right of [false, true]) {
    for (const below of [false, true]) {
      const sideways = right ? beside.right : beside.left;
      const upDown = below ? beside.below : beside.above;
      if (!sideways && !upDown) continue;
      marks.push([
        right ? leftMm + widthMm - inset : leftMm + inset,
        below ? topMm + heightMm - inset : topMm + inset,
      ]);
    }
  }
  return marks;
}
