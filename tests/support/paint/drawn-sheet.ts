import { convertRgbToXyz65, convertXyz65ToRgb } from 'culori/fn';
import { type Lab, xyzOfLab } from '../../../app/core/colour/lab.ts';
import { decodeSrgb } from '../../../app/core/colour/srgb.ts';
import { colourOfWashes, defaultPaperLab } from '../../../app/core/paint/colour-of-washes.ts';
import { emptyRaster, type LinearRaster } from '../../../app/core/raster/linear-raster.ts';
import { seeded } from '../reading/seeded.ts';
import { normals, paintNamed } from './made-ladder.ts';

const white = convertRgbToXyz65({ r: 1, g: 1, b: 1 });

/** Linear red, green, blue where paper has 1, 1, 1. Built by culori, not by the code under test. */
function lightOf(lab: Lab): number[] {
  const paper = xyzOfLab(defaultPaperLab);
  const [x, y, z] = xyzOfLab(lab).map((value, i) => value / (paper[i] as number)) as [
    number,
    number,
    number,
  ];
  const { r, g, b } = convertXyz65ToRgb({ x: x * white.x, y: y * white.y, z: z * white.z });
  return [r, g, b].map((code) => Math.max(0, decodeSrgb(code)));
}

// Bradford's sharpened cones (Lam, K. M. (1985), thesis, University of Bradford; ICC.1, annex E) and the way back.
const toCones = [0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296];
const fromCones = [
  0.9869929, -0.1470543, 0.1599627, 0.4323053, 0.5183603, 0.0492912, -0.0085287, 0.0400428,
  0.9684867,
];
const times = (matrix: readonly number[], vector: readonly number[]): number[] =>
  [0, 3, 6].map((row) =>
    vector.reduce((sum, each, c) => sum + each * (matrix[row + c] as number), 0),
  );
/** X, Y, Z of linear sRGB, IEC 61966-2-1. */
const toXyz = [0.4124, 0.3576, 0.1805, 0.2126, 0.7152, 0.0722, 0.0193, 0.1192, 0.9505];
const conesOf = (rgb: readonly number[]): number[] => times(toCones, times(toXyz, rgb));
const whiteCones = conesOf([1, 1, 1]);

/** Linear red, green, blue of a colour in coloured light: an eye's or a camera's, not channel by channel of a screen. */
function litBy(light: readonly number[], colour: readonly number[]): number[] {
  const cones = conesOf(colour);
  const lit = conesOf(light).map(
    (each, c) => (each * (cones[c] as number)) / (whiteCones[c] as number),
  );
  const [x = 0, y = 0, z = 0] = times(fromCones, lit);
  const { r, g, b } = convertXyz65ToRgb({ x, y, z });
  return [r, g, b].map((code) => Math.max(0, decodeSrgb(code)));
}

export interface SheetLook {
  /** Linear red, green, blue of the paper in the middle. */
  readonly light: readonly [number, number, number];
  /** By how much ln of the light changes from left to right and from top to bottom. */
  readonly fall: readonly [number, number];
  readonly turnDegrees: number;
  /** Standard deviation of each linear channel, as a share of the paper's. */
  readonly noise: number;
  /** Width of a dark table seen round the sheet, as a share of the photo's width. */
  readonly table: number;
  /** Granulation: standard deviation of a grain of 2 pixels, as a share of a patch's light. */
  readonly grain?: number;
  /** A patch below the ladder across a level black line, or an upright one. */
  readonly line?: { readonly over: Lab; readonly on: Lab; readonly upright?: boolean };
}

/** Black ink, L*. */
export const inkLab: Lab = [24, 0, 0];

/** A row of five patches and one of two, as the guide asks for. */
export const drawnLabs = (id: string): Lab[] => {
  const paint = paintNamed(id);
  const ladder = [16, 8, 4, 2, 1].map((load) =>
    colourOfWashes([{ paints: [paint], parts: [1], load }]),
  );
  const mixed = ['pw6-titanium-white', 'pbr7-burnt-umber'].map((other) =>
    colourOfWashes([{ paints: [paint, paintNamed(other)], parts: [1, 1], load: 8 }]),
  );
  return [...ladder, ...mixed];
};

const places = [0, 1, 2, 3, 4]
  .map((n) => ({ x: 0.14 + 0.15 * n, y: 0.25 }))
  .concat([0, 1].map((n) => ({ x: 0.14 + 0.15 * n, y: 0.6 })));
const patchWidth = 0.11;
const patchHeight = 0.2;

/** Where the patch over the line lies, and the line, of the sheet. */
const overPatch = { left: 0.6, top: 0.56, width: 0.14, height: 0.26 };
const inkLine = { left: 0.53, top: 0.66, width: 0.28, height: 0.07 };
const uprightLine = { left: 0.64, top: 0.49, width: 0.055, height: 0.4 };

type Box = typeof overPatch;
const covers = ({ left, top, width, height }: Box, x: number, y: number): boolean =>
  x > left && x < left + width && y > top && y < top + height;

/** A photo of that sheet, 400 x 300. */
export function drawnSheet(labs: readonly Lab[], look: SheetLook): LinearRaster {
  const raster = emptyRaster(400, 300);
  const lights = labs.map((lab) => litBy(look.light, lightOf(lab)));
  const planes = [raster.red, raster.green, raster.blue];
  const normal = normals(seeded(8));
  const { line } = look;
  const [over, on, ink] = line
    ? [line.over, line.on, inkLab].map((lab) => litBy(look.light, lightOf(lab)))
    : [];
  const grains = Array.from({ length: 200 * 150 }, () => 1 + (look.grain ?? 0) * normal());
  const turn = (look.turnDegrees * Math.PI) / 180;
  for (let p = 0; p < 400 * 300; p++) {
    const px = ((p % 400) + 0.5) / 400 - 0.5;
    const py = ((Math.floor(p / 400) + 0.5) / 300 - 0.5) * 0.75;
    const x = px * Math.cos(turn) + py * Math.sin(turn) + 0.5;
    const y = (py * Math.cos(turn) - px * Math.sin(turn)) / 0.75 + 0.5;
    const t = look.table;
    const onTable = x < t || x > 1 - t || y < t || y > 1 - t;
    const inside = places.findIndex(
      (place) =>
        x > place.x && x < place.x + patchWidth && y > place.y && y < place.y + patchHeight,
    );
    const isOver = line !== undefined && covers(overPatch, x, y);
    const isInk = line !== undefined && covers(line.upright ? uprightLine : inkLine, x, y);
    const onLine = isOver ? (isInk ? over : on) : isInk ? ink : undefined;
    const colour = onTable ? [0.08, 0.05, 0.03] : (lights[inside] ?? onLine ?? look.light);
    const isPainted = inside >= 0 || isOver;
    const grain = isPainted
      ? (grains[(Math.floor(p / 800) * 200 + ((p % 400) >> 1)) % grains.length] ?? 1)
      : 1;
    const fall = Math.exp(look.fall[0] * px + (look.fall[1] * py) / 0.75);
    for (let c = 0; c < 3; c++) {
      (planes[c] as Float32Array)[p] = Math.max(
        0,
        fall * (grain * (colour[c] as number) + look.noise * (look.light[c] as number) * normal()),
      );
    }
  }
  return raster;
}
