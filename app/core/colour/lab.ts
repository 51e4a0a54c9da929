import { cieCurve, inverseCieCurve, luminanceOfLinear } from './lightness.ts';
import { codeOfLinear, linearOfCode } from './srgb.ts';

/** CIE L*a*b*, D65 / 2 degree observer (ISO/CIE 11664-4). L* 0..100, 100 is white. */
export type Lab = readonly [lightness: number, a: number, b: number];

/** Red, green, blue, 0..255, encoded sRGB (IEC 61966-2-1). */
export type Rgb = readonly [number, number, number];

/** A point of the upright photo: 0..1 from its left and from its top. */
export type Point = readonly [x: number, y: number];

/** A range that is honest about not knowing: [low, high]. */
export type Range = readonly [low: number, high: number];

type Three = readonly [number, number, number];

const divideBySum = ([red, green, blue]: Three): Three => {
  const sum = red + green + blue;
  return [red / sum, green / sum, blue / sum];
};

/**
 * Shares of linear red, green and blue in X and in Z, each as a share of the white's: those rows of
 * the sRGB primaries divided by their sums, so that a grey has a* = b* = 0. The row of Y is in
 * `lightness.ts`. Source: CSS Color 4, 10.1 (D65 of x 0.3127, y 0.3290).
 */
export const sharesOfX = divideBySum([0.41239079926595934, 0.357584339383878, 0.1804807884018343]);
export const sharesOfZ = divideBySum([
  0.01933081871559182, 0.11919477979462598, 0.9505321522496607,
]);

/**
 * Writes L*, a*, b* of X, Y, Z, each as a share of the white's, to out[start ..]. ISO/CIE 11664-4.
 */
export function writeLabOfXyz(
  x: number,
  y: number,
  z: number,
  out: Float64Array,
  start: number,
): void {
  writeLabOfCurve(cieCurve(x), cieCurve(y), cieCurve(z), out, start);
}

/** Writes L*, a*, b* to out[start ..] where f(X), f(Y), f(Z) are known. ISO/CIE 11664-4. */
export function writeLabOfCurve(
  fx: number,
  fy: number,
  fz: number,
  out: Float64Array,
  start: number,
): void {
  out[start] = 116 * fy - 16;
  out[start + 1] = 500 * (fx - fy);
  out[start + 2] = 200 * (fy - fz);
}

/** X, Y, Z of a colour, each as a share of the white's. ISO/CIE 11664-4. */
export function xyzOfLab([lightness, a, b]: Lab): readonly [x: number, y: number, z: number] {
  const f = (lightness + 16) / 116;
  return [inverseCieCurve(f + a / 500), inverseCieCurve(f), inverseCieCurve(f - b / 200)];
}

/** The colour of linear red, green and blue 0..1 (sRGB primaries). */
export function labOfLinear(red: number, green: number, blue: number): Lab {
  const lab = new Float64Array(3);
  writeLabOfXyz(
    sharesOfX[0] * red + sharesOfX[1] * green + sharesOfX[2] * blue,
    luminanceOfLinear(red, green, blue),
    sharesOfZ[0] * red + sharesOfZ[1] * green + sharesOfZ[2] * blue,
    lab,
    0,
  );
  return [lab[0], lab[1], lab[2]];
}

const whiteX = 0.3127 / 0.329;
const whiteZ = (1 - 0.3127 - 0.329) / 0.329;

/**
 * Linear red, green and blue of a colour; below 0 or above 1 where a screen can't show it. White
 * and inverse matrix of the sRGB primaries: CSS Color 4, 10.1 (D65 of x 0.3127, y 0.3290), as
 * culori has them.
 */
export function linearOfLab(lab: Lab): Three {
  const xyz = xyzOfLab(lab);
  const x = whiteX * xyz[0];
  const y = xyz[1];
  const z = whiteZ * xyz[2];
  return [
    3.2409699419045226 * x - 1.537383177570094 * y - 0.4986107602930034 * z,
    -0.9692436362808796 * x + 1.8759675015077202 * y + 0.0415550574071756 * z,
    0.0556300796969936 * x - 0.2039769588889765 * y + 1.0569715142428786 * z,
  ];
}

/** sRGB bytes of a colour; what a screen can't show is clipped channel by channel. */
export function rgbOfLab(lab: Lab): Rgb {
  const [red, green, blue] = linearOfLab(lab);
  return [codeOfLinear(red), codeOfLinear(green), codeOfLinear(blue)];
}

/** The colour of sRGB bytes. */
export const labOfRgb = ([red, green, blue]: Rgb): Lab =>
  labOfLinear(linearOfCode[red], linearOfCode[green], linearOfCode[blue]);

/** Colour table for `paintSlots`: 3 bytes a slot. */
export function tableOf(colours: readonly Lab[]): Uint8ClampedArray {
  const table = new Uint8ClampedArray(colours.length * 3);
  colours.forEach((lab, slot) => {
    table.set(rgbOfLab(lab), slot * 3);
  });
  return table;
}

/** A CSS colour for a Lab colour (D65), clipped to sRGB. */
export function cssColour(lab: Lab): string {
  const [red, green, blue] = rgbOfLab(lab);
  return `rgb(${red} ${green} ${blue})`;
}

/** The neutral grey of a lightness, L* 0..100. */
export const cssGrey = (lightness: number): string => cssColour([lightness, 0, 0]);
