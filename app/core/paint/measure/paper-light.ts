import { type Point, sharesOfX, sharesOfZ, writeLabOfXyz, xyzOfLab } from '../../colour/lab.ts';
import { luminanceOfLinear } from '../../colour/lightness.ts';
import { solveLinear } from '../../numeric/solve.ts';
import type { LinearRaster } from '../../raster/linear-raster.ts';
import { defaultPaperLab } from '../colour-of-washes.ts';
import type { FramedColour, PatchFrame } from './measured-photo.ts';

/** The brighter part of one small area of the photo. */
export interface Tile {
  /** Where that was seen, shares of the photo's sides. */
  readonly place: Point;
  /** Natural logarithms of linear red, green, blue. */
  readonly logs: readonly [number, number, number];
  /** Natural logarithm of its luminance. */
  readonly logLuminance: number;
}

const tilesAcross = 20;
/** Bare paper shows in the brightest part of a tile; single bright pixels are noise. */
const brighterShare = 0.75;
const dark = 1e-4;

/** Tiles of a raster, each with the pixel that three quarters of it are darker than. */
export function paperTiles({ width, height, red, green, blue }: LinearRaster): Tile[] {
  const side = Math.max(2, Math.floor(Math.max(width, height) / tilesAcross));
  const tiles: Tile[] = [];
  const luminance = new Float64Array(side * side);
  for (let top = 0; top + side <= height; top += side) {
    for (let left = 0; left + side <= width; left += side) {
      const pixel = (n: number): number => (top + Math.floor(n / side)) * width + left + (n % side);
      for (let n = 0; n < side * side; n++) {
        const p = pixel(n);
        luminance[n] = luminanceOfLinear(red[p], green[p], blue[p]);
      }
      const chosen = luminance.slice().sort()[Math.floor(brighterShare * side * side)];
      const brightest = pixel(luminance.indexOf(chosen));
      const log = (plane: Float32Array): number => Math.log(Math.max(dark, plane[brightest]));
      tiles.push({
        place: [
          ((brightest % width) + 0.5) / width,
          (Math.floor(brightest / width) + 0.5) / height,
        ],
        logs: [log(red), log(green), log(blue)],
        logLuminance: Math.log(Math.max(dark, chosen)),
      });
    }
  }
  return tiles;
}

/**
 * How bright bare paper is at a place: for each channel the logarithm is a + b x + c y, x and y
 * 0..1.
 */
export interface PaperLight {
  readonly planes: readonly (readonly [number, number, number])[];
  /** The tiles that were taken for paper. */
  readonly paper: readonly Tile[];
}

/** Paper strays no further from its plane than this: 6 % of its light, 4 % of its colour (own). */
const strayLight = 0.06;
const strayColour = 0.04;
const mostRounds = 25;

function planeThrough(tiles: readonly Tile[], levelOf: (tile: Tile) => number) {
  const matrix = new Float64Array(9);
  const right = new Float64Array(3);
  for (const tile of tiles) {
    const row = [1, tile.place[0] - 0.5, tile.place[1] - 0.5];
    for (let i = 0; i < 3; i++) {
      right[i] = right[i] + row[i] * levelOf(tile);
      for (let j = 0; j < 3; j++) {
        matrix[i * 3 + j] = matrix[i * 3 + j] + row[i] * row[j];
      }
    }
  }
  // A few tiles in a row would leave the tilt open: a touch of 'level' closes it.
  for (const i of [4, 8]) matrix[i] = matrix[i] + 1e-3 * tiles.length;
  solveLinear(matrix, right, 3);
  return [right[0], right[1], right[2]] as const;
}

const levelAt = (plane: readonly [number, number, number], { place }: Tile): number =>
  plane[0] + plane[1] * (place[0] - 0.5) + plane[2] * (place[1] - 0.5);

/**
 * The light on the sheet, from its bare paper: planes fitted to the logarithms of red, green, blue
 * over tiles, from the brightest colour that much of the photo has, dropping what is no paper until
 * nothing changes. Null where hardly any tile agrees.
 */
export function paperLight(tiles: readonly Tile[], fewestShare = 0.06): PaperLight | null {
  const bright = [...tiles].sort((one, two) => two.logLuminance - one.logLuminance);
  const start = bright[Math.floor(0.1 * bright.length)];
  if (!start) return null;
  // Half an e-fold of light and a tenth of colour round the bright start: paper in uneven light.
  let paper = tiles.filter(
    (tile) =>
      Math.abs(tile.logLuminance - start.logLuminance) < 0.5 &&
      colourApart(tile, start.logs) < 0.15,
  );
  let planes = channelPlanes(paper);
  let stray = 4;
  for (let round = 0; round < mostRounds && paper.length > 0; round++) {
    const kept = tiles.filter((tile) => {
      const logs = planes.map((plane) => levelAt(plane, tile));
      const light = tile.logLuminance - levelAt(planes[3], tile);
      // Paint and shadow only ever take light away: what lies under the plane goes first.
      return (
        light > -strayLight * stray &&
        light < 2 * strayLight * stray &&
        colourApart(tile, logs) < strayColour * stray
      );
    });
    const same = stray === 1 && kept.length === paper.length;
    if (kept.length < 3) break;
    paper = kept;
    planes = channelPlanes(paper);
    if (same) break;
    stray = Math.max(1, stray * 0.7);
  }
  return paper.length >= Math.max(3, fewestShare * tiles.length)
    ? { planes: planes.slice(0, 3), paper }
    : null;
}

const channelPlanes = (tiles: readonly Tile[]) => [
  ...([0, 1, 2] as const).map((c) => planeThrough(tiles, (tile) => tile.logs[c])),
  planeThrough(tiles, (tile) => tile.logLuminance),
];

/** How far two colours differ but for their brightness. */
function colourApart(
  { logs: [r, g, b] }: Tile,
  [r2 = 0, g2 = 0, b2 = 0]: readonly number[],
): number {
  return Math.max(Math.abs(r - g - (r2 - g2)), Math.abs(b - g - (b2 - g2)));
}

const [paperX, paperY, paperZ] = xyzOfLab(defaultPaperLab);

/** Linear red, green, blue of bare paper at a place (x, y 0..1 of the photo), into `out`. */
function writePaperAt({ planes }: PaperLight, x: number, y: number, out: Float64Array): void {
  for (let c = 0; c < 3; c++) {
    const plane = planes[c];
    out[c] = Math.exp(plane[0] + plane[1] * (x - 0.5) + plane[2] * (y - 0.5));
  }
}

/** Colours of a raster's pixels as they would be on the default paper in even light. */
class SheetColours {
  readonly #raster: LinearRaster;
  readonly #light: PaperLight;
  /** Work space for one pixel: bare paper in its place, and its Lab. */
  readonly #paper = new Float64Array(3);
  readonly #lab = new Float64Array(3);

  constructor(raster: LinearRaster, light: PaperLight) {
    this.#raster = raster;
    this.#light = light;
  }

  /**
   * Lab (D65, 2 degree) of pixel `from`, to lab[start], lab[start + step] and lab[start + 2 step],
   * with the light on the sheet taken out channel by channel (von Kries, in linear light) and bare
   * paper brought to the default paper.
   */
  write(from: number, lab: Float32Array, start: number, step: number): void {
    const { width, height, red, green, blue } = this.#raster;
    const paper = this.#paper;
    const across = ((from % width) + 0.5) / width;
    const down = (Math.floor(from / width) + 0.5) / height;
    writePaperAt(this.#light, across, down, paper);
    const r = red[from] / paper[0];
    const g = green[from] / paper[1];
    const b = blue[from] / paper[2];
    const x = paperX * (sharesOfX[0] * r + sharesOfX[1] * g + sharesOfX[2] * b);
    const y = paperY * luminanceOfLinear(r, g, b);
    const z = paperZ * (sharesOfZ[0] * r + sharesOfZ[1] * g + sharesOfZ[2] * b);
    writeLabOfXyz(x, y, z, this.#lab, 0);
    for (let c = 0; c < 3; c++) lab[start + c * step] = this.#lab[c];
  }
}

/** Lab of every pixel as `SheetColours` writes it, three planes one after the other. */
export function paperLab(raster: LinearRaster, light: PaperLight): Float32Array {
  const count = raster.width * raster.height;
  const lab = new Float32Array(3 * count);
  const colours = new SheetColours(raster, light);
  for (let i = 0; i < count; i++) colours.write(i, lab, i, count);
  return lab;
}

/** The share of a frame's sides that counts: its rim may be edge, bead or paper. */
const middleShare = 0.5;

const atShare = (values: Float32Array, share: number): number =>
  values.sort()[Math.floor(share * (values.length - 1))] ?? 0;

/** Four fifths of the pixels lie nearer to the middle colour than the spread. */
const spreadShare = 0.8;

/** The colour in the middle of a frame: median of each of L*, a*, b*. */
export function framedColour(
  raster: LinearRaster,
  light: PaperLight,
  frame: PatchFrame,
): FramedColour {
  const { width, height } = raster;
  const rim = (1 - middleShare) / 2;
  const span = (start: number, length: number, pixels: number): [number, number] => {
    const from = Math.min(pixels - 1, Math.floor((start + rim * length) * pixels));
    const to = Math.floor((start + (1 - rim) * length) * pixels);
    return [from, Math.min(pixels, Math.max(from + 1, to))];
  };
  const [left, right] = span(frame.left, frame.width, width);
  const [top, bottom] = span(frame.top, frame.height, height);
  const count = (right - left) * (bottom - top);
  const lab = new Float32Array(3 * count);
  const colours = new SheetColours(raster, light);
  let next = 0;
  for (let y = top; y < bottom; y++) {
    for (let x = left; x < right; x++) {
      colours.write(y * width + x, lab, next++, count);
    }
  }
  const plane = (c: number): Float32Array => lab.slice(c * count, (c + 1) * count);
  const [l, a, b] = [atShare(plane(0), 0.5), atShare(plane(1), 0.5), atShare(plane(2), 0.5)];
  const away = new Float32Array(count);
  for (let p = 0; p < count; p++) {
    away[p] = Math.hypot(lab[p] - l, lab[count + p] - a, lab[2 * count + p] - b);
  }
  return { frame, lab: [l, a, b], spread: atShare(away, spreadShare) };
}
