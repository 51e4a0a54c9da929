import type { Lab } from '../../colour/lab.ts';
import { reserveChroma } from '../../limits.ts';
import type { LabPlanes } from '../../raster/linear-raster.ts';

/**
 * A cell is one band of one family in one passage, packed into one number for maps: band 0..7, family
 * 0..7, passage 0 or 1. A group is one band in one passage: the band's number, 8 more in passage 1; behind
 * them lies the paper of each passage, what of band 1 stays white.
 * Band 0 is what her brush keeps white, whatever the picture shows there: it takes no part in what is
 * found in the picture.
 */
export const familiesPerBand = 8;
const groupsPerPassage = 8;
const firstPaperGroup = 2 * groupsPerPassage;
export const groupCount = firstPaperGroup + 2;
export const maxCells = groupCount * familiesPerBand;
export const brushedBand = 0;
export const lightestBand = 1;
export const packCell = (group: number, family: number): number => group * familiesPerBand + family;
export const groupOfCell = (cell: number): number => Math.floor(cell / familiesPerBand);
export const groupOf = (band: number, passage: number): number => band + groupsPerPassage * passage;
export const paperGroup = (passage: number): number => firstPaperGroup + passage;
export const isPaperGroup = (group: number): boolean => group >= firstPaperGroup;
export const bandOfGroup = (group: number): number =>
  isPaperGroup(group) ? lightestBand : group % groupsPerPassage;
export const passageOfGroup = (group: number): number =>
  isPaperGroup(group) ? group - firstPaperGroup : Math.floor(group / groupsPerPassage);
export const bandOfCell = (cell: number): number => bandOfGroup(groupOfCell(cell));
export const passageOfCell = (cell: number): number => passageOfGroup(groupOfCell(cell));
export const familyOfCell = (cell: number): number => cell % familiesPerBand;

/** Cell of every pixel; `passages` holds 0 or 1, all 0 where it is null. */
export function packCells(
  bands: Uint8Array,
  families: Uint8Array,
  passages: Uint8Array | null = null,
): Uint8Array {
  const map = new Uint8Array(bands.length);
  for (let i = 0; i < map.length; i++) map[i] = packCell(bands[i], families[i]);
  if (passages === null) return map;
  const further = packCell(groupOf(0, 1), 0);
  for (let i = 0; i < map.length; i++) map[i] += further * passages[i];
  return map;
}

/** What a function says of every number a map can hold, for loops over pixels. */
export const tabled = (say: (cell: number) => number): Uint8Array =>
  Uint8Array.from({ length: 256 }, (_, cell) => say(cell));

/** Pixels counted and their mean simplified colour; a* and b* as a texture looks, which is brighter than its mean. */
export interface MeanTones {
  readonly pixels: number;
  readonly lab: Lab;
}

/** Added to C* where the colours of a texture are weighed by it: greys count too (own). */
export const greyWeight = 12;

/** Pixels, L*, a*, b*; weight by C*, weighted a*, b*. */
const sumsPerCell = 7;

/**
 * How far a mean colour is a texture's, 0..1: what is nearly neutral is paper or grey, whatever a few strong colours
 * in it or at its border say, and becomes a texture's as it leaves neutral (own).
 */
export const textureShare = (plainChroma: number): number =>
  Math.min(1, Math.max(0, plainChroma / reserveChroma - 1));

/** Sums over the pixels of every cell, as found before anything is merged. */
export class CellTones {
  readonly #sums = new Float64Array(maxCells * sumsPerCell);

  constructor(cells: Uint8Array, { lightness, a, b }: LabPlanes) {
    // Neighbours mostly share their cell: a run is summed up before it is put away.
    let run = cells[0] ?? 0;
    let start = 0;
    let l = 0;
    let plainA = 0;
    let plainB = 0;
    let weight = 0;
    let u = 0;
    let v = 0;
    for (let i = 0; i < cells.length; i++) {
      const cell = cells[i];
      if (cell !== run) {
        this.#add(run, i - start, l, plainA, plainB, weight, u, v);
        run = cell;
        start = i;
        l = plainA = plainB = weight = u = v = 0;
      }
      const own = a[i];
      const other = b[i];
      const colourful = greyWeight + Math.sqrt(own * own + other * other);
      l += lightness[i];
      plainA += own;
      plainB += other;
      weight += colourful;
      u += colourful * own;
      v += colourful * other;
    }
    this.#add(run, cells.length - start, l, plainA, plainB, weight, u, v);
  }

  #add(
    cell: number,
    pixels: number,
    l: number,
    a: number,
    b: number,
    weight: number,
    u: number,
    v: number,
  ): void {
    const sums = this.#sums;
    const offset = cell * sumsPerCell;
    sums[offset] += pixels;
    sums[offset + 1] += l;
    sums[offset + 2] += a;
    sums[offset + 3] += b;
    sums[offset + 4] += weight;
    sums[offset + 5] += u;
    sums[offset + 6] += v;
  }

  /** Means over all pixels of the cells that `counts` picks; null where there are none. */
  meanOf(counts: (cell: number) => boolean): MeanTones | null {
    const total = new Float64Array(sumsPerCell);
    for (let cell = 0; cell < maxCells; cell++) {
      if (!counts(cell)) continue;
      for (let i = 0; i < sumsPerCell; i++) total[i] += this.#sums[cell * sumsPerCell + i];
    }
    const [pixels, lightness, a, b, weight, weightedA, weightedB] = total;
    if (pixels === 0) return null;
    const plainA = a / pixels;
    const plainB = b / pixels;
    const texture = textureShare(Math.sqrt(plainA * plainA + plainB * plainB));
    return {
      pixels,
      lab: [
        Math.min(100, Math.max(0, lightness / pixels)),
        plainA + texture * (weightedA / weight - plainA),
        plainB + texture * (weightedB / weight - plainB),
      ],
    };
  }
}

/** Pixels by group, for 256 groups, from all shapes of a map; `group` says which one a cell belongs to. */
export function sumAreasByGroup(
  { kinds, areasPx }: { readonly kinds: Uint8Array; readonly areasPx: Int32Array },
  group: (cell: number) => number,
): Uint32Array {
  const areas = new Uint32Array(256);
  for (let shape = 0; shape < kinds.length; shape++) {
    const own = group(kinds[shape]);
    areas[own] = areas[own] + areasPx[shape];
  }
  return areas;
}
