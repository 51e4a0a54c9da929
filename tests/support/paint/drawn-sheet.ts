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
}

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

/** A photo of that sheet, 400 x 300. */
export function drawnSheet(labs: readonly Lab[], look: SheetLook): LinearRaster {
  const raster = emptyRaster(400, 300);
  const lights = labs.map(lightOf);
  const planes = [raster.red, raster.green, raster.blue];
  const normal = normals(seeded(8));
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
    const colour = onTable ? [0.12, 0.07, 0.04] : (lights[inside] ?? [1, 1, 1]);
    const fall = Math.exp(look.fall[0] * px + (look.fall[1] * py) / 0.75);
    for (let c = 0; c < 3; c++) {
      const paper = (look.light[c] as number) * fall;
      (planes[c] as Float32Array)[p] = Math.max(
        0,
        paper * ((colour[c] as number) + look.noise * normal()),
      );
    }
  }
  return raster;
}
