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
 * Along a line of pixels `by` apart: what of the lightest band lies as a rim between paper and a darker band has no
 * colour of its own: it becomes paper and takes the colour of the paper beside it.
 */
function closeRims(
  cells: Uint8Array,
  { lightness, a, b }: LabPlanes,
  from: number,
  by: number,
  count: number,
  rimPx: number,
): void {
  let before = 0;
  for (let start = 0; start < count; start++) {
    const kind = kindOfCell[cells[from + start * by]];
    if (kind !== pale) {
      before = kind;
      continue;
    }
    let after = 0;
    let end = start + 1;
    for (; end < count; end++) {
      after = kindOfCell[cells[from + end * by]];
      if (after !== pale) break;
    }
    if (end === count) after = 0;
    if ((before === paperWhite) !== (after === paperWhite) && end - start <= rimPx) {
      const beside = from + (before === paperWhite ? start - 1 : end) * by;
      for (let n = start; n < end; n++) {
        const i = from + n * by;
        cells[i] = asPaper[cells[i]];
        lightness[i] = lightness[beside];
        a[i] = a[beside];
        b[i] = b[beside];
      }
    }
    before = after;
    start = end;
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
  for (let y = 0; y < height; y++) closeRims(cells, planes, y * width, 1, width, rimPx);
  for (let x = 0; x < width; x++) closeRims(cells, planes, x, width, height, rimPx);
  const paper = counts.map((count, passage) =>
    packCell(paperGroup(passage), count.indexOf(Math.max(...count))),
  );
  const gathered = tabled((cell) =>
    kindOfCell[cell] === paperWhite ? paper[passageOfCell(cell)] : cell,
  );
  for (let i = 0; i < cells.length; i++) cells[i] = gathered[cells[i]];
}
