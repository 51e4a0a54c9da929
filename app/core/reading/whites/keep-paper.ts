import { reserveChroma, reserveWithin } from '../../limits.ts';
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
import { onTheSheet } from '../tone-range.ts';
import { binOf, bins, lightnessOfBin } from '../values/list-bands.ts';

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
 * Along a line of pixels `by` apart: what of the lightest band lies as a rim between paper and a darker band is no
 * colour of its own, and becomes paper too.
 */
function closeRims(
  cells: Uint8Array,
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
      for (let n = start; n < end; n++) cells[from + n * by] = asPaper[cells[from + n * by]];
    }
    before = after;
    start = end;
  }
}

/**
 * What of the lightest band stays paper, place by place: planned within `reserveWithin` of it and nearly neutral. In
 * every passage these pixels become one cell, in place; it goes by the family most of them had. Rims of it count as paper. The rest of the band
 * is painted in its own colour.
 */
export function keepPaper(
  cells: Uint8Array,
  { lightness, a, b }: LabPlanes,
  range: ToneRange,
  { width, height }: PixelSize,
  pxPerMm: number,
): void {
  const isPale = Uint8Array.from({ length: bins }, (_, bin) =>
    range.paper - onTheSheet(range, lightnessOfBin(bin)) <= reserveWithin ? 1 : 0,
  );
  const counts = [0, 1].map(() => new Uint32Array(familiesPerBand));
  for (let i = 0; i < cells.length; i++) {
    const cell = cells[i];
    if (kindOfCell[cell] === 0 || isPale[binOf(lightness[i])] === 0) continue;
    if (a[i] * a[i] + b[i] * b[i] >= reserveChroma * reserveChroma) continue;
    counts[passageOfCell(cell)][familyOfCell(cell)]++;
    cells[i] = asPaper[cell];
  }
  const rimPx = Math.round(Math.max(leastRimPx, rimMm * pxPerMm));
  for (let y = 0; y < height; y++) closeRims(cells, y * width, 1, width, rimPx);
  for (let x = 0; x < width; x++) closeRims(cells, x, width, height, rimPx);
  const paper = counts.map((count, passage) =>
    packCell(paperGroup(passage), count.indexOf(Math.max(...count))),
  );
  const gathered = tabled((cell) =>
    kindOfCell[cell] === paperWhite ? paper[passageOfCell(cell)] : cell,
  );
  for (let i = 0; i < cells.length; i++) cells[i] = gathered[cells[i]];
}
