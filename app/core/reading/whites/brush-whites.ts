import { mostBands } from '../../limits.ts';
import { insideStroke, paintStroke } from '../../raster/paint-stroke.ts';
import type { PixelSize } from '../../raster/size.ts';
import type { Edge } from '../edges/edge.ts';
import { classifyEdge } from '../edges/judge-edges.ts';
import type { Border, ToneRange } from '../reading.ts';
import {
  bandOfCell,
  brushedBand,
  type CellTones,
  familiesPerBand,
  familyOfCell,
  groupOf,
  type MeanTones,
  maxCells,
  packCell,
  passageOfCell,
} from '../shapes/cells.ts';
import type { Slot } from '../slot.ts';
import { targetOf } from '../tone-range.ts';
import type { WhiteMode, WhiteStroke } from './whites.ts';

/** The commonest family of a passage in the picture. */
function commonestFamily(tones: CellTones, passage: number): number {
  let best = 0;
  let most = 0;
  for (let family = 0; family < familiesPerBand; family++) {
    const own = tones.meanOf((k) => familyOfCell(k) === family && passageOfCell(k) === passage);
    if (!own || own.pixels <= most) continue;
    best = family;
    most = own.pixels;
  }
  return best;
}

/**
 * Brings her strokes into the maps, in place. What she keeps becomes one cell of each passage, so that
 * no border runs within a white; it is told by its band and goes by its passage's commonest family.
 * `tones` are of the picture before; without strokes nothing happens.
 */
export function brushWhites(
  maps: { readonly cells: Uint8Array; readonly bands: Uint8Array },
  strokes: readonly WhiteStroke[],
  { width, height }: PixelSize,
  tones: CellTones,
  range: ToneRange,
): void {
  if (strokes.length === 0) return;
  const { cells, bands } = maps;
  const brushed = whiteStrokeMap(strokes, { width, height });
  const painted = paintedInstead(tones, range);
  const kept = Uint8Array.from({ length: maxCells }, (_, cell) => {
    const passage = passageOfCell(cell);
    return packCell(groupOf(brushedBand, passage), commonestFamily(tones, passage));
  });
  for (let i = 0; i < cells.length; i++) {
    const stroke = brushed[i];
    if (stroke === 0) continue;
    const table = stroke === brushedAs.keep ? kept : painted;
    const cell = table[cells[i]];
    cells[i] = cell;
    bands[i] = bandOfCell(cell);
  }
}

/** What a pixel of the map of her strokes says; 0 where she did not go. */
const brushedAs: Readonly<Record<WhiteMode, number>> = { keep: 1, paint: 2 };

/** What her strokes leave on every pixel, later ones over earlier: see `brushedAs`. */
function whiteStrokeMap(strokes: readonly WhiteStroke[], size: PixelSize): Uint8Array {
  const { width, height } = size;
  const map = new Uint8Array(width * height);
  const longSide = Math.max(width, height);
  for (const { mode, path, brush } of strokes) {
    const value = brushedAs[mode];
    if (brush > 0) {
      // At least so wide that a dab reaches the middle of some pixel wherever it falls.
      paintStroke(map, size, path, Math.max(0.75, (brush * longSide) / 2), value);
      continue;
    }
    const inside = insideStroke(path, size);
    for (let i = 0; i < map.length; i++) if (inside[i] === 1) map[i] = value;
  }
  return map;
}

interface Painted extends MeanTones {
  readonly cell: number;
}

const nearestTo = ([, a, b]: MeanTones['lab'], cells: readonly Painted[]): Painted =>
  cells.reduce((best, one) =>
    Math.hypot(one.lab[1] - a, one.lab[2] - b) < Math.hypot(best.lab[1] - a, best.lab[2] - b)
      ? one
      : best,
  );

/**
 * By cell, what it becomes where she paints over a white: one that would stay paper goes to the
 * lightest painted band of its passage, to its own family there or the one nearest in colour. Itself
 * where it is painted anyway, or where its passage has nothing painted.
 */
function paintedInstead(tones: CellTones, range: ToneRange): Uint8Array {
  const painted: Painted[] = [];
  const whites: Painted[] = [];
  for (let cell = 0; cell < maxCells; cell++) {
    const mean = tones.meanOf((k) => k === cell);
    if (!mean || bandOfCell(cell) === brushedBand) continue;
    (targetOf(range, mean).reserve ? whites : painted).push({ ...mean, cell });
  }
  const instead = Uint8Array.from({ length: maxCells }, (_, cell) => cell);
  for (const { cell, lab } of whites) {
    const near = painted.filter((one) => passageOfCell(one.cell) === passageOfCell(cell));
    const lightest = Math.min(...near.map((one) => bandOfCell(one.cell)));
    const choice = near.filter((one) => bandOfCell(one.cell) === lightest);
    if (choice.length === 0) continue;
    const own = choice.find((one) => familyOfCell(one.cell) === familyOfCell(cell));
    instead[cell] = (own ?? nearestTo(lab, choice)).cell;
  }
  return instead;
}

/**
 * Pixels per band with those of her whites counted to the lightest band that has some of its
 * own; where all is hers, to the lightest the picture has.
 */
export function withBrushedWhites(areas: Uint32Array, tones: CellTones): Uint32Array {
  const brushed = areas[brushedBand];
  if (brushed === 0) return areas;
  const bands = Array.from({ length: mostBands }, (_, i) => i + 1);
  const lightest =
    bands.find((band) => areas[band]) ??
    bands.find((band) => tones.meanOf((cell) => bandOfCell(cell) === band)) ??
    1;
  const counted = areas.slice();
  counted[brushedBand] = 0;
  counted[lightest] = counted[lightest] + brushed;
  return counted;
}

/**
 * Round a white kept by her brush the photo has no edge to measure: bare paper beside paint is as sharp as
 * she paints it, and as strong as the two are planned apart. Between two whites there is none.
 */
export function edgesOfBrushed(
  { edges, borders }: { readonly edges: readonly Edge[]; readonly borders: readonly Border[] },
  slots: readonly Slot[],
): { edges: Edge[]; borders: Border[] } {
  const planned = (a: number, b: number): number | null => {
    const [one, two] = [slots[a], slots[b]];
    if (!one || !two || !(one.byHand || two.byHand)) return null;
    return one.reserve && two.reserve ? 0 : Math.abs(one.target[0] - two.target[0]);
  };
  return {
    edges: edges.map((edge) => {
      const contrast = planned(edge.a, edge.b);
      if (contrast === null) return edge;
      const sharp = { contrast, widthMm: 0, widthShare: 0, graded: false, outOfFocus: false };
      return { ...edge, ...sharp, kind: classifyEdge(contrast, 0), heldByColour: false };
    }),
    borders: borders.map((border) => {
      const contrast = planned(border.a, border.b);
      if (contrast === null) return border;
      const lost = classifyEdge(contrast, 0) === 'lost' ? 1 : 0;
      return { ...border, contrast, soft: 0, lost };
    }),
  };
}
