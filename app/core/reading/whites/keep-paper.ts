import { reserveChroma, reserveWithin } from '../../limits.ts';
import type { LabPlanes } from '../../raster/linear-raster.ts';
import type { ToneRange } from '../reading.ts';
import {
  bandOfCell,
  familiesPerBand,
  familyOfCell,
  groupOfCell,
  isPaperGroup,
  packCell,
  paperGroup,
  passageOfCell,
} from '../shapes/cells.ts';
import { onTheSheet } from '../tone-range.ts';
import { binOf, bins, lightnessOfBin } from '../values/list-bands.ts';

/**
 * What of the lightest band stays paper, place by place: planned within `reserveWithin` of it and nearly neutral. In
 * every passage these pixels become one cell, in place; it goes by the family most of them had. The rest of the band
 * is painted in its own colour.
 */
export function keepPaper(
  cells: Uint8Array,
  { lightness, a, b }: LabPlanes,
  range: ToneRange,
): void {
  const isPale = Uint8Array.from({ length: bins }, (_, bin) =>
    range.paper - onTheSheet(range, lightnessOfBin(bin)) <= reserveWithin ? 1 : 0,
  );
  const counts = [0, 1].map(() => new Uint32Array(familiesPerBand));
  for (let i = 0; i < cells.length; i++) {
    const cell = cells[i];
    if (bandOfCell(cell) !== 1 || isPale[binOf(lightness[i])] === 0) continue;
    if (a[i] * a[i] + b[i] * b[i] >= reserveChroma * reserveChroma) continue;
    const passage = passageOfCell(cell);
    const family = familyOfCell(cell);
    counts[passage][family] += 1;
    cells[i] = packCell(paperGroup(passage), family);
  }
  const paper = counts.map((count, passage) =>
    packCell(paperGroup(passage), count.indexOf(Math.max(...count))),
  );
  for (let i = 0; i < cells.length; i++) {
    if (isPaperGroup(groupOfCell(cells[i]))) cells[i] = paper[passageOfCell(cells[i])];
  }
}
