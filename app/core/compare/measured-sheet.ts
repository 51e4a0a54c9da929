import { type Lab, rgbOfLab, sharesOfX, sharesOfZ } from '../colour/lab.ts';
import { cieCurve, luminanceOfLinear, tabulatedCieCurve } from '../colour/lightness.ts';
import { withoutCurve } from '../paint/measure/camera.ts';
import type { LabPlanes } from '../raster/linear-raster.ts';
import type { SheetLight } from './even-light.ts';
import { clippedFrom, type SquaredSheet } from './light-cells.ts';

/** What can be said of a pixel: it counts, is off the photo, at the end of its scale, brighter than paper can be, or in a shadow. */
export const pixelStates = { counts: 0, missing: 1, clipped: 2, glare: 3, shadow: 4 } as const;

/** The sheet as photographed, brought to even daylight: L*, a*, b*, and what can be said of every pixel. */
export interface MeasuredSheet extends LabPlanes {
  readonly states: Uint8Array;
}

const steps = 2048;

/** The tone curve taken back, by table over the root of the light, where eye and curve are about even. */
const curveTable = (curve: number): Float32Array =>
  Float32Array.from({ length: steps + 2 }, (_, n) =>
    withoutCurve(Math.min(1, (n / steps) ** 2), curve),
  );

/** Paper throws back no more light than this, with its grain: beyond it something shines, L* (own). */
const shinesFrom = 103;

/** Takes tone curve and light out of the squared photo. */
export function measureSheet(
  { raster, margin, size }: SquaredSheet,
  { curve, space, bright, red, blue }: SheetLight,
): MeasuredSheet {
  const { width, height } = size;
  const table = curveTable(curve);
  const count = width * height;
  const [lightness, a, b] = [0, 1, 2].map(() => new Float32Array(count));
  const states = new Uint8Array(count);
  const half = Math.max(width, height) / 2;
  const straight = (light: number): number => {
    const place = Math.sqrt(Math.min(1, Math.max(0, light))) * steps;
    const entry = place | 0;
    return table[entry] + (place - entry) * (table[entry + 1] - table[entry]);
  };
  const cie = (t: number): number => (t >= 0 && t <= 1 ? tabulatedCieCurve(t) : cieCurve(t));
  const [s0, s1, s2, s3, s4, s5, s6, s7, s8] = space.into;
  const [f0, f1, f2, f3, f4, f5, f6, f7, f8] = space.back;
  const [xr, xg, xb] = sharesOfX;
  const [zr, zg, zb] = sharesOfZ;
  const across = Float64Array.from(
    { length: width },
    (_, column) => (column + 0.5 - width / 2) / half,
  );
  const evenX = across.map((x) => Math.exp(-bright[1] * x - bright[3] * x * x));
  const redX = across.map((x) => Math.exp(-red[1] * x));
  const blueX = across.map((x) => Math.exp(-blue[1] * x));
  for (let row = 0, i = 0; row < height; row++) {
    const y = (row + 0.5 - height / 2) / half;
    const evenY = Math.exp(-bright[0] - bright[2] * y - bright[5] * y * y);
    const redY = Math.exp(-red[0] - red[2] * y);
    const blueY = Math.exp(-blue[0] - blue[2] * y);
    for (let column = 0; column < width; column++, i++) {
      const from = (row + margin) * raster.width + column + margin;
      const ownRed = raster.red[from];
      const ownGreen = raster.green[from];
      const ownBlue = raster.blue[from];
      if (Number.isNaN(ownRed)) {
        states[i] = pixelStates.missing;
        continue;
      }
      if (Math.max(ownRed, ownGreen, ownBlue) >= clippedFrom) states[i] = pixelStates.clipped;
      const x = across[column];
      const even = evenX[column] * evenY * Math.exp(-bright[4] * x * y);
      const r = straight(ownRed);
      const g = straight(ownGreen);
      const blueish = straight(ownBlue);
      const c0 = (s0 * r + s1 * g + s2 * blueish) * even * redX[column] * redY;
      const c1 = (s3 * r + s4 * g + s5 * blueish) * even;
      const c2 = (s6 * r + s7 * g + s8 * blueish) * even * blueX[column] * blueY;
      const evenRed = f0 * c0 + f1 * c1 + f2 * c2;
      const evenGreen = f3 * c0 + f4 * c1 + f5 * c2;
      const evenBlue = f6 * c0 + f7 * c1 + f8 * c2;
      const fx = cie(xr * evenRed + xg * evenGreen + xb * evenBlue);
      const fy = cie(luminanceOfLinear(evenRed, evenGreen, evenBlue));
      const fz = cie(zr * evenRed + zg * evenGreen + zb * evenBlue);
      lightness[i] = 116 * fy - 16;
      a[i] = 500 * (fx - fy);
      b[i] = 200 * (fy - fz);
      if (lightness[i] > shinesFrom && states[i] === pixelStates.counts)
        states[i] = pixelStates.glare;
    }
  }
  return { lightness, a, b, states };
}

/** L* of what is off the photo: the grey round every picture. */
const offThePhoto: Lab = [50, 0, 0];

/** The measured sheet as it is looked at: RGBA, opaque. `shift` is added to the colour of the pixels it names. */
export function measuredRgba(
  { lightness, a, b, states }: MeasuredSheet,
  shift?: { readonly by: Lab; readonly holds: (pixel: number) => boolean },
): Uint8ClampedArray<ArrayBuffer> {
  const rgba = new Uint8ClampedArray(4 * lightness.length).fill(255);
  for (let i = 0; i < lightness.length; i++) {
    const by = shift?.holds(i) ? shift.by : null;
    const lab: Lab =
      states[i] === pixelStates.missing
        ? offThePhoto
        : [lightness[i] + (by?.[0] ?? 0), a[i] + (by?.[1] ?? 0), b[i] + (by?.[2] ?? 0)];
    rgba.set(rgbOfLab(lab), 4 * i);
  }
  return rgba;
}
