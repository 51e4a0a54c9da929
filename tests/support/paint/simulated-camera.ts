import { type Lab, linearOfLab } from '../../../app/core/colour/lab.ts';
import {
  daylightD65,
  labOfReflectance,
  type Spectrum,
  spectrumSize,
} from '../../../app/core/colour/spectrum.ts';
import { decodeSrgb } from '../../../app/core/colour/srgb.ts';
import { solveSquare } from '../../../app/core/numeric/solve.ts';
import { normals } from './made-ladder.ts';

export type Light = readonly [number, number, number];

export interface CameraFaults {
  /** Standard deviation of ln of its red and blue gains. */
  readonly whiteBalance: number;
  /** S-curve laid over the encoded values: share of a steep logistic curve. */
  readonly curve: number;
  /** Chroma times this, in linear light. */
  readonly saturation: number;
}

const nm = Array.from({ length: spectrumSize }, (_, i) => 380 + 10 * i);

const encode = (linear: number): number =>
  linear <= 0.0031308 ? 12.92 * Math.max(0, linear) : 1.055 * linear ** (1 / 2.4) - 0.055;

const logistic = (v: number): number => 1 / (1 + Math.exp(-7 * (v - 0.5)));
const steep = (v: number): number => (logistic(v) - logistic(0)) / (logistic(1) - logistic(0));

/** Exposed so that white paper has about this linear light. */
const exposure = 0.75;

/**
 * A camera of its own: sensors as bell curves about usual peaks, its colour matrix fitted to a few hundred
 * reflectances in daylight, then faults. Nothing of it is taken from the code under test. Answers the linear light a
 * reader of its sRGB file sees, from a reflectance as seen from outside.
 */
export function simulatedCamera(
  random: () => number,
  { whiteBalance, curve, saturation }: CameraFaults,
): (seen: Spectrum) => Light {
  const normal = normals(random);
  const sensors = [
    [597, 38],
    [533, 42],
    [460, 30],
  ].map(([peak, width]) => {
    const middle = (peak as number) + 5 * normal();
    return nm.map(
      (w, i) =>
        (daylightD65[i] as number) * Math.exp(-(((w - middle) / (width as number)) ** 2) / 2),
    );
  });
  const whites = sensors.map((sensor) => sensor.reduce((sum, each) => sum + each, 0));
  const sense = (seen: Spectrum): number[] =>
    sensors.map(
      (sensor, c) =>
        sensor.reduce((sum, each, i) => sum + each * (seen[i] as number), 0) /
        (whites[c] as number),
    );

  // Colour matrix: least squares over made-up reflectances, smooth bumps and steps.
  const samples = Array.from({ length: 300 }, (_, n) => {
    const middle = 380 + 350 * random();
    const width = 20 + 100 * random();
    const base = 0.05 + 0.4 * random();
    const high = base + (0.95 - base) * random();
    return nm.map((w) =>
      n % 2
        ? base + (high - base) / (1 + Math.exp((n % 4 < 2 ? 1 : -1) * ((w - middle) / width) * 4))
        : high - (high - base) * Math.exp(-(((w - middle) / width) ** 2)),
    );
  });
  samples.push(...Array.from({ length: 60 }, (_, n) => nm.map(() => (n + 1) / 60)));
  const matrix = [0, 1, 2].map((c) => {
    const square = new Float64Array(9);
    const right = new Float64Array(3);
    for (const sample of samples) {
      const raw = sense(sample);
      const target = linearOfLab(labOfReflectance(sample, { k1: 0, k2: 0 }) as Lab)[c] as number;
      for (let i = 0; i < 3; i++) {
        right[i] = (right[i] as number) + (raw[i] as number) * target;
        for (let j = 0; j < 3; j++)
          square[i * 3 + j] =
            (square[i * 3 + j] as number) + (raw[i] as number) * (raw[j] as number);
      }
    }
    solveSquare(square, right, 3);
    return [...right];
  });
  const gains = [Math.exp(whiteBalance * normal()), 1, Math.exp(whiteBalance * normal())];
  return (seen) => {
    const raw = sense(seen).map((value, c) => value * (gains[c] as number) * exposure);
    const rgb = matrix.map((row) =>
      row.reduce((sum, each, c) => sum + each * (raw[c] as number), 0),
    );
    const [r, g, b] = rgb as [number, number, number];
    const grey = 0.2126 * r + 0.7152 * g + 0.0722 * b;
    const light = [r, g, b].map((value) => {
      const v = Math.min(1, encode(Math.max(0, grey + saturation * (value - grey))));
      return decodeSrgb(Math.round(255 * ((1 - curve) * v + curve * steep(v))) / 255);
    });
    return light as unknown as Light;
  };
}
