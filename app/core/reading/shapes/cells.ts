import type { Lab } from '../../colour/lab.ts';
import type { LabPlanes } from '../../raster/linear-raster.ts';
import type { ToneMeans } from '../slot.ts';

/**
 * A kind is one band with one family in one passage, as a single number for maps: band 0..7, family
 * 0..7, passage 0 or 1. A group is one band in one passage: the band's number, 8 more in passage 1.
 * Band 0 is white by her brush, whatever is there in the picture: it takes part in nothing that is
 * found in the picture.
 */
export const familiesPerBand = 8;
const groupsPerPassage = 8;
export const maxCells = 2 * groupsPerPassage * familiesPerBand;
export const brushedBand = 0;
export const packCell = (group: number, family: number): number => group * familiesPerBand + family;
export const groupOfCell = (kind: number): number => Math.floor(kind / familiesPerBand);
export const groupOf = (band: number, passage: number): number => band + groupsPerPassage * passage;
export const bandOfGroup = (group: number): number => group % groupsPerPassage;
export const passageOfGroup = (group: number): number => Math.floor(group / groupsPerPassage);
export const bandOfCell = (kind: number): number => bandOfGroup(groupOfCell(kind));
export const passageOfCell = (kind: number): number => passageOfGroup(groupOfCell(kind));
export const familyOfCell = (kind: number): number => kind % familiesPerBand;

/** Kind of every pixel; `passages` holds 0 or 1, all 0 where it is null. */
export function packCells(
  bands: Uint8Array,
  families: Uint8Array,
  passages: Uint8Array | null = null,
): Uint8Array {
  const map = new Uint8Array(bands.length);
  for (let i = 0; i < map.length; i++) {
    const group = groupOf(bands[i], passages ? passages[i] : 0);
    map[i] = packCell(group, families[i]);
  }
  return map;
}

/** Pixels counted and their mean simplified colour and tones. */
export interface MeanTones {
  readonly pixels: number;
  readonly lab: Lab;
  readonly tones: ToneMeans;
}

const sumsPerKind = 6;

/** Sums over the pixels of every kind, as found before anything is merged. */
export class CellTones {
  readonly #sums = new Float64Array(maxCells * sumsPerKind);

  /** lo and hi: the tone range's, L*. */
  constructor(kinds: Uint8Array, { lightness, a, b }: LabPlanes, lo: number, hi: number) {
    // Neighbours mostly share their kind: a run is summed up before it is put away.
    let run = kinds[0] ?? 0;
    let start = 0;
    let [l, u, v, clamped, floored] = [0, 0, 0, 0, 0];
    for (let i = 0; i < kinds.length; i++) {
      const kind = kinds[i];
      if (kind !== run) {
        this.#add(run, i - start, l, u, v, clamped, floored);
        run = kind;
        start = i;
        l = u = v = clamped = floored = 0;
      }
      const own = lightness[i];
      const above = Math.max(own, lo);
      l += own;
      u += a[i];
      v += b[i];
      clamped += Math.min(above, hi);
      floored += above;
    }
    this.#add(run, kinds.length - start, l, u, v, clamped, floored);
  }

  #add(
    kind: number,
    pixels: number,
    l: number,
    u: number,
    v: number,
    clamped: number,
    floored: number,
  ): void {
    const sums = this.#sums;
    const at = kind * sumsPerKind;
    sums[at] = sums[at] + pixels;
    sums[at + 1] = sums[at + 1] + l;
    sums[at + 2] = sums[at + 2] + u;
    sums[at + 3] = sums[at + 3] + v;
    sums[at + 4] = sums[at + 4] + clamped;
    sums[at + 5] = sums[at + 5] + floored;
  }

  /** Means over all pixels of the kinds that `counts` picks; null where there are none. */
  meanOf(counts: (kind: number) => boolean): MeanTones | null {
    const total = new Float64Array(sumsPerKind);
    for (let kind = 0; kind < maxCells; kind++) {
      if (!counts(kind)) continue;
      for (let i = 0; i < sumsPerKind; i++) {
        total[i] = total[i] + this.#sums[kind * sumsPerKind + i];
      }
    }
    const pixels = total[0];
    if (pixels === 0) return null;
    const mean = (i: number): number => total[i] / pixels;
    return {
      pixels,
      lab: [Math.min(100, Math.max(0, mean(1))), mean(2), mean(3)],
      tones: { clamped: mean(4), floored: mean(5) },
    };
  }
}

/** Pixels per group, 256 groups; `group` says which group a kind of the map belongs to. */
export function sumAreasByGroup(map: Uint8Array, group: (kind: number) => number): Uint32Array {
  const perKind = new Uint32Array(256);
  for (let i = 0; i < map.length; i++) {
    const kind = map[i];
    perKind[kind] = perKind[kind] + 1;
  }
  const areas = new Uint32Array(256);
  for (let kind = 0; kind < 256; kind++) {
    const area = perKind[kind];
    if (area > 0) areas[group(kind)] = areas[group(kind)] + area;
  }
  return areas;
}
