/** Equal squares over the sheet, and the very same ones over the photo. */
export interface OutlineGrid {
  /** Side of a square on the sheet, mm. */
  readonly sideMm: number;
  /** Whole squares across, numbered from 1 at the left. */
  readonly across: number;
  /** Squares down, lettered from A at the top; the last may be cut by the edge of the sheet. */
  readonly down: number;
  /** How much of a square the last row has, 0..1; 1 where it is whole. */
  readonly lastRow: number;
}

const fewest = 4;
const most = 8;
/** A last row this little short of a square, or over one, counts as fitting, squares. */
const fitsWithin = 0.02;

/**
 * A grid to carry the drawing over by: a whole number of squares across, 4 to 8 (common practice), the
 * number that leaves the least of a row over at the foot, of equals the one nearest to 6.
 */
export function outlineGrid(sheet: {
  readonly widthMm: number;
  readonly heightMm: number;
}): OutlineGrid {
  const choices = Array.from({ length: most - fewest + 1 }, (_, i) => {
    const across = fewest + i;
    const sideMm = sheet.widthMm / across;
    const rows = sheet.heightMm / sideMm;
    return { across, sideMm, rows, over: Math.abs(rows - Math.max(1, Math.round(rows))) };
  });
  choices.sort(
    (one, other) =>
      Math.round((one.over - other.over) * 100) ||
      Math.abs(one.across - 6) - Math.abs(other.across - 6),
  );
  const { across, sideMm, rows } = choices[0];
  const down = Math.max(1, Math.ceil(rows - fitsWithin));
  const lastRow = Math.min(1, rows - (down - 1));
  return { sideMm, across, down, lastRow: lastRow > 1 - fitsWithin ? 1 : lastRow };
}

/** 'A' for the first row, 'B' for the second, 'AA' after 'Z'. */
export function rowLetter(row: number): string {
  const letter = String.fromCharCode(65 + (row % 26));
  return row < 26 ? letter : rowLetter(Math.floor(row / 26) - 1) + letter;
}
