import type { Lab, Point } from '../../colour/lab.ts';
import { luminanceOfLinear } from '../../colour/lightness.ts';
import { solveLinear } from '../../numeric/solve.ts';
import type { LinearRaster } from '../../raster/linear-raster.ts';
import type { PixelSize } from '../../raster/size.ts';
import { type Light, labOnPaper } from './camera.ts';
import type { Evenness, FramedColour, PatchFrame } from './measured-photo.ts';

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

/** Linear red, green, blue of bare paper at a place of the photo (x, y 0..1). */
function paperAt({ planes }: PaperLight, [x, y]: Point): Light {
  const level = (c: number): number =>
    Math.exp(planes[c][0] + planes[c][1] * (x - 0.5) + planes[c][2] * (y - 0.5));
  return [level(0), level(1), level(2)];
}

const placeOf = (pixel: number, { width, height }: PixelSize): Point => [
  ((pixel % width) + 0.5) / width,
  (Math.floor(pixel / width) + 0.5) / height,
];

/** The colour of a pixel as it would be on the default paper in even light, without the tone curve. */
const pixelLab = (raster: LinearRaster, light: PaperLight, curve: number, pixel: number): Lab =>
  labOnPaper(
    [raster.red[pixel], raster.green[pixel], raster.blue[pixel]],
    paperAt(light, placeOf(pixel, raster)),
    curve,
  );

/** Lab of every pixel, three planes one after the other. */
export function paperLab(raster: LinearRaster, light: PaperLight, curve: number): Float32Array {
  const count = raster.width * raster.height;
  const lab = new Float32Array(3 * count);
  for (let p = 0; p < count; p++) {
    const colour = pixelLab(raster, light, curve, p);
    for (let c = 0; c < 3; c++) lab[c * count + p] = colour[c];
  }
  return lab;
}

/** The share of a frame's sides that counts: its rim may be edge, bead or paper. */
const middleShare = 0.5;

/** The pixels in the middle of a frame: columns and rows from, up to but not including. */
function middleOf(frame: PatchFrame, { width, height }: PixelSize) {
  const rim = (1 - middleShare) / 2;
  const span = (start: number, length: number, pixels: number): [number, number] => {
    const from = Math.min(pixels - 1, Math.floor((start + rim * length) * pixels));
    const to = Math.floor((start + (1 - rim) * length) * pixels);
    return [from, Math.min(pixels, Math.max(from + 1, to))];
  };
  return {
    columns: span(frame.left, frame.width, width),
    rows: span(frame.top, frame.height, height),
  };
}

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[(values.length - 1) >> 1] ?? 0;

const medianOfThree = (values: readonly Light[]): Light => [
  median(values.map(([first]) => first)),
  median(values.map(([, second]) => second)),
  median(values.map(([, , third]) => third)),
];

/** The light from the middle of a frame, and that of bare paper in its place; both linear. */
export function framedLight(raster: LinearRaster, light: PaperLight, frame: PatchFrame) {
  const { columns, rows } = middleOf(frame, raster);
  const lights: Light[] = [];
  for (let y = rows[0]; y < rows[1]; y++) {
    for (let p = y * raster.width + columns[0]; p < y * raster.width + columns[1]; p++) {
      lights.push([raster.red[p], raster.green[p], raster.blue[p]]);
    }
  }
  const middle: Point = [frame.left + frame.width / 2, frame.top + frame.height / 2];
  return { light: medianOfThree(lights), paper: paperAt(light, middle) };
}

/** A frame's middle is looked at in so many fields across and down: grain is even over them, a border is not. */
const fields = 3;
/** Lab distance between the fields' colours from which a frame lies on more than one (own). */
const unevenDistance = 8;
/** Grains gather: fields of a grainy wash may differ by so many times what pixels differ by within one (own). */
const grainTimes = 3;
/** A plane that takes up so much of the fields' differences is a wash running out, not a border (own). */
const slopeShare = 0.88;

const apart = (one: Lab, two: Lab): number =>
  Math.hypot(one[0] - two[0], one[1] - two[1], one[2] - two[2]);

/** Whether the fields of a frame, each with its pixels, row by row, are of one colour. */
function evennessOf(byField: readonly (readonly Lab[])[]): Evenness {
  const colours = byField.map(medianOfThree);
  const grain = median(byField.map((own, n) => median(own.map((lab) => apart(lab, colours[n])))));
  const furthest = Math.max(...colours.flatMap((one) => colours.map((two) => apart(one, two))));
  if (furthest <= Math.max(unevenDistance, grainTimes * grain)) return 'even';
  const offset = (n: number): number => n - (fields - 1) / 2;
  let all = 0;
  let plane = 0;
  for (const c of [0, 1, 2] as const) {
    const mean = colours.reduce((sum, lab) => sum + lab[c], 0) / colours.length;
    let [across, down, squares] = [0, 0, 0];
    for (const [n, lab] of colours.entries()) {
      all += (lab[c] - mean) ** 2;
      across += lab[c] * offset(n % fields);
      down += lab[c] * offset(Math.floor(n / fields));
      squares += offset(n % fields) ** 2;
    }
    plane += (across ** 2 + down ** 2) / squares;
  }
  return plane > slopeShare * all ? 'slope' : 'two colours';
}

/** The colour in the middle of a frame: median of each of L*, a*, b*. */
export function framedColour(
  raster: LinearRaster,
  light: PaperLight,
  curve: number,
  frame: PatchFrame,
): Pick<FramedColour, 'frame' | 'lab' | 'evenness'> {
  const { columns, rows } = middleOf(frame, raster);
  const labs: Lab[] = [];
  const byField: Lab[][] = Array.from({ length: fields ** 2 }, () => []);
  const fieldOf = (n: number, [from, to]: readonly [number, number]): number =>
    Math.floor((fields * (n - from)) / (to - from));
  for (let y = rows[0]; y < rows[1]; y++) {
    for (let x = columns[0]; x < columns[1]; x++) {
      const lab = pixelLab(raster, light, curve, y * raster.width + x);
      labs.push(lab);
      byField[fieldOf(y, rows) * fields + fieldOf(x, columns)].push(lab);
    }
  }
  const filled = byField.every(({ length }) => length > 0);
  const evenness = filled ? evennessOf(byField) : 'even';
  return { frame, lab: medianOfThree(labs), evenness };
}
