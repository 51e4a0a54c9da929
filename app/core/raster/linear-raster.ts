import { sharesOfX, sharesOfZ } from '../colour/lab.ts';
import { lightnessOfLinear, luminanceOfLinear, tabulatedCieCurve } from '../colour/lightness.ts';
import { codeOfLinear } from '../colour/srgb.ts';
import { Room } from './room.ts';

/**
 * The working raster: three planes of linear light (IEC 61966-2-1 primaries, D65), row by row, each
 * of width * height. What sRGB can show lies in 0..1; a stronger colour of Display P3 has channels
 * below 0 or above 1, its X, Y and Z are within the white's all the same.
 */
export interface LinearRaster {
  readonly width: number;
  readonly height: number;
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
}

/** Share of the source's pixels, 0..1, whose three channels are all at the end of the scale. */
export interface ClippedShares {
  readonly light: number;
  readonly dark: number;
}

/** A raster of that size, of whatever is left in the room; black where none is given. */
export function emptyRaster(width: number, height: number, room = new Room()): LinearRaster {
  const plane = (): Float32Array => room.floats(width * height);
  return { width, height, red: plane(), green: plane(), blue: plane() };
}

/** L* of every pixel of the raster, row by row. */
export function lightnessPlane(
  { red, green, blue }: LinearRaster,
  plane = new Float32Array(red.length),
): Float32Array {
  for (let i = 0; i < plane.length; i++) {
    plane[i] = lightnessOfLinear(red[i], green[i], blue[i]);
  }
  return plane;
}

// Read once, for the loop: some ways to load a file look imports up each time.
const [xr, xg, xb] = sharesOfX;
const [zr, zg, zb] = sharesOfZ;
const curve = tabulatedCieCurve;
const luminanceOf = luminanceOfLinear;

/** Three planes of one size: L* 0..100, a*, b* (D65 / 2 degree, ISO/CIE 11664-4). */
export interface LabPlanes {
  readonly lightness: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
}

/** Writes L*, a*, b* of one pixel, by the table of the curve. */
export function writePixelLab(raster: LinearRaster, i: number, out: Float64Array): void {
  const r = raster.red[i];
  const g = raster.green[i];
  const b = raster.blue[i];
  const fx = curve(xr * r + xg * g + xb * b);
  const fy = curve(luminanceOf(r, g, b));
  const fz = curve(zr * r + zg * g + zb * b);
  out[0] = 116 * fy - 16;
  out[1] = 500 * (fx - fy);
  out[2] = 200 * (fy - fz);
}

/** Writes L*, a*, b* of `count` pixels from `start` on, three numbers a pixel, by the table of the curve. */
export function writeLabs(
  { red, green, blue }: LinearRaster,
  start: number,
  count: number,
  out: Float64Array,
): void {
  for (let i = start, at = 0; i < start + count; i++, at += 3) {
    const r = red[i];
    const g = green[i];
    const b = blue[i];
    const x = curve(xr * r + xg * g + xb * b);
    const y = curve(luminanceOf(r, g, b));
    const z = curve(zr * r + zg * g + zb * b);
    out[at] = 116 * y - 16;
    out[at + 1] = 500 * (x - y);
    out[at + 2] = 200 * (y - z);
  }
}

/** Turns the raster's planes into L*, a*, b* in place: the raster is used up. */
export function labInPlace(raster: LinearRaster): LabPlanes {
  const { red, green, blue } = raster;
  for (let i = 0; i < red.length; i++) {
    const r = red[i];
    const g = green[i];
    const b = blue[i];
    const x = curve(xr * r + xg * g + xb * b);
    const y = curve(luminanceOf(r, g, b));
    const z = curve(zr * r + zg * g + zb * b);
    red[i] = 116 * y - 16;
    green[i] = 500 * (x - y);
    blue[i] = 200 * (y - z);
  }
  return { lightness: red, a: green, b: blue };
}

/** In near-black the camera's noise is all the colour there is: it grows no more than this. */
const mostColour = 4;

/**
 * Gives one pixel another luminance, its colour kept: all channels scaled alike, drawn to grey only as
 * far as the range 0..1 asks for. A colour beyond that range is drawn to white no further than on the
 * straight way there, so that a small change stays small.
 */
export function setLuminance(
  { red, green, blue }: LinearRaster,
  i: number,
  luminance: number,
): void {
  const r = red[i];
  const g = green[i];
  const b = blue[i];
  const was = luminanceOf(r, g, b);
  let colour = was > 0 ? Math.min(mostColour, luminance / was) : 0;
  const over = Math.max(r, g, b) - was;
  if (over > 0) colour = Math.min(colour, (1 - luminance) / Math.min(over, 1 - was));
  red[i] = withinEnds(luminance + colour * (r - was), r, colour);
  green[i] = withinEnds(luminance + colour * (g - was), g, colour);
  blue[i] = withinEnds(luminance + colour * (b - was), b, colour);
}

/** A channel held in 0..1, or in as much beyond as it was before the scaling. */
const withinEnds = (light: number, was: number, scale: number): number =>
  Math.max(Math.min(0, scale * was), Math.min(Math.max(1, was), light));

type Rgba = Uint8ClampedArray<ArrayBuffer>;

/**
 * The greyscale: RGBA, every pixel the neutral grey of the same luminance, so of the same L* (to
 * the half code a byte can't show).
 */
export function greyOf(raster: LinearRaster): Rgba {
  const { red, green, blue } = raster;
  const rgba = new Uint8ClampedArray(4 * red.length).fill(255);
  for (let i = 0, to = 0; i < red.length; i++, to += 4) {
    const code = codeOfLinear(luminanceOf(red[i], green[i], blue[i]));
    rgba[to] = code;
    rgba[to + 1] = code;
    rgba[to + 2] = code;
  }
  return rgba;
}

/** The cropped reference as it is looked at: RGBA, encoded sRGB, each channel clipped to it. */
export function referenceRgba(raster: LinearRaster): Rgba {
  const { red, green, blue } = raster;
  const rgba = new Uint8ClampedArray(4 * red.length).fill(255);
  for (let i = 0, to = 0; i < red.length; i++, to += 4) {
    rgba[to] = codeOfLinear(red[i]);
    rgba[to + 1] = codeOfLinear(green[i]);
    rgba[to + 2] = codeOfLinear(blue[i]);
  }
  return rgba;
}
