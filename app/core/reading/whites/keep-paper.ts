import type { LabPlanes } from '../../raster/linear-raster.ts';
import type { PixelSize } from '../../raster/size.ts';
import type { ToneRange } from '../reading.ts';
import {
  bandOfCell,
  familiesPerBand,
  familyOfCell,
  groupOfCell,
  isPaperGroup,
  lightestBand,
  packCell,
  paperGroup,
  passageOfCell,
  tabled,
} from '../shapes/cells.ts';
import { binOf } from '../values/list-bands.ts';
import { isNeutral, paleBins } from './narrow-whites.ts';

/** What is as narrow as that, mm, but no less than so many px, is two colours blended by looking at them at once (own). */
const rimMm = 1.5;
const leastRimPx = 3;

/** What a pixel of the lightest band is: paper, or a colour of its own. */
const [pale, paperWhite] = [1, 2];
const kindOfCell = tabled((cell) => {
  if (isPaperGroup(groupOfCell(cell))) return paperWhite;
  return bandOfCell(cell) === lightestBand ? pale : 0;
});
/** The cell of paper in the passage and family of a cell. */
const asPaper = tabled((cell) => packCell(paperGroup(passageOfCell(cell)), familyOfCell(cell)));

/**
 * Pixels of the lightest band `by` apart, from `start` to before `end`, with the kinds before and after them: a rim
 * between paper and a darker band has no colour of its own; it becomes paper and takes the colour of the paper beside it.
 */
function closeRim(
  cells: Uint8Array,
  { lightness, a, b }: LabPlanes,
  start: number,
  end: number,
  by: number,
  before: number,
  after: number,
): void {
  if ((before === paperWhite) === (after === paperWhite)) return;
  const beside = before === paperWhite ? start - by : end;
  for (let i = start; i < end; i += by) {
    cells[i] = asPaper[cells[i]];
    lightness[i] = lightness[beside];
    a[i] = a[beside];
    b[i] = b[beside];
  }
}

/** Closes rims of at most `rimPx` along a row; beyond its ends there is neither paper nor a darker band. */
function closeRow(
  cells: Uint8Array,
  planes: LabPlanes,
  from: number,
  width: number,
  rimPx: number,
): void {
  const last = from + width;
  let before = 0;
  for (let i = from, start = from; i <= last; i++) {
    const kind = i < last ? kindOfCell[cells[i]] : 0;
    if (kind === pale) continue;
    if (i > start && i - start <= rimPx) closeRim(cells, planes, start, i, 1, before, kind);
    before = kind;
    start = i + 1;
  }
}

/** The same down all columns, row by row. */
function closeColumns(
  cells: Uint8Array,
  planes: LabPlanes,
  { width, height }: PixelSize,
  rimPx: number,
): void {
  const before = new Uint8Array(width);
  const lengths = new Int32Array(width);
  for (let y = 0, i = 0; y <= height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const kind = y < height ? kindOfCell[cells[i]] : 0;
      const length = lengths[x];
      if (kind === pale) {
        lengths[x] = length + 1;
        continue;
      }
      if (length > 0) {
        if (length <= rimPx) {
          closeRim(cells, planes, i - length * width, i, width, before[x], kind);
        }
        lengths[x] = 0;
      }
      before[x] = kind;
    }
  }
}

/**
 * What of the lightest band stays paper, place by place: planned within `reserveWithin` of it and nearly neutral. In
 * every passage these pixels become one cell, in place; it goes by the family most of them had. Rims of it count as paper.
 * The rest of the band is painted in its own colour.
 */
export function keepPaper(
  cells: Uint8Array,
  planes: LabPlanes,
  range: ToneRange,
  { width, height }: PixelSize,
  pxPerMm: number,
): void {
  const { lightness, a, b } = planes;
  const isPale = paleBins(range);
  const counts = [0, 1].map(() => new Uint32Array(familiesPerBand));
  for (let i = 0; i < cells.length; i++) {
    const cell = cells[i];
    if (kindOfCell[cell] === 0 || isPale[binOf(lightness[i])] === 0) continue;
    if (!isNeutral(a[i], b[i])) continue;
    counts[passageOfCell(cell)][familyOfCell(cell)]++;
    cells[i] = asPaper[cell];
  }
  const rimPx = Math.round(Math.max(leastRimPx, rimMm * pxPerMm));
  for (let y = 0; y < height; y++) closeRow(cells, planes, y * width, width, rimPx);
  closeColumns(cells, planes, { width, height }, rimPx);
  const paper = counts.map((count, passage) =>
    packCell(paperGroup(passage), count.indexOf(Math.max(...count))),
  );
  const gathered = tabled((cell) =>
    kindOfCell[cell] === paperWhite ? paper[passageOfCell(cell)] : cell,
  );
  for (let i = 0; i < cells.length; i++) cells[i] = gathered[cells[i]];
}
