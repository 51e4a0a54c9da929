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
} from '../shapes/cells.ts';
import { onTheSheet } from '../tone-range.ts';
import { binOf, bins, lightnessOfBin } from '../values/list-bands.ts';

/** What is as narrow as that, mm, but no less than so many px, is two colours blended by looking at them at once (own). */
const rimMm = 1.5;
const leastRimPx = 3;

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
  const isPaper = (n: number): boolean => isPaperGroup(groupOfCell(cells[from + n * by]));
  const isPale = (n: number): boolean =>
    bandOfCell(cells[from + n * by]) === lightestBand && !isPaper(n);
  for (let start = 0; start < count; start++) {
    if (!isPale(start)) continue;
    let end = start;
    while (end < count && isPale(end)) end++;
    const [before, after] = [start > 0 && isPaper(start - 1), end < count && isPaper(end)];
    if (before !== after && end - start <= rimPx) {
      for (let n = start; n < end; n++) {
        const i = from + n * by;
        cells[i] = packCell(paperGroup(passageOfCell(cells[i])), familyOfCell(cells[i]));
      }
    }
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
    if (bandOfCell(cell) !== lightestBand || isPale[binOf(lightness[i])] === 0) continue;
    if (a[i] * a[i] + b[i] * b[i] >= reserveChroma * reserveChroma) continue;
    const passage = passageOfCell(cell);
    const family = familyOfCell(cell);
    counts[passage][family] += 1;
    cells[i] = packCell(paperGroup(passage), family);
  }
  const rimPx = Math.round(Math.max(leastRimPx, rimMm * pxPerMm));
  for (let y = 0; y < height; y++) closeRims(cells, y * width, 1, width, rimPx);
  for (let x = 0; x < width; x++) closeRims(cells, x, width, height, rimPx);
  const paper = counts.map((count, passage) =>
    packCell(paperGroup(passage), count.indexOf(Math.max(...count))),
  );
  for (let i = 0; i < cells.length; i++) {
    if (isPaperGroup(groupOfCell(cells[i]))) cells[i] = paper[passageOfCell(cells[i])];
  }
}
