import type { PixelSize } from '../../../app/model/pixel-size.ts';
import type { LabPlanes } from '../pixels/lab-planes.ts';

/** Colours of a picture or a grid, a byte a value: L* x 2.55, a* and b* (-128..127). */
export interface ColourBytes {
  readonly size: PixelSize;
  readonly lightness: Uint8ClampedArray;
  readonly a: Int8Array;
  readonly b: Int8Array;
}

/**
 * What the subject's line is looked for in, so small that it can stay in memory between strokes:
 * simplified colours, and the unsimplified L* x 2.55.
 */
export interface SubjectPlanes extends ColourBytes {
  readonly plain: Uint8ClampedArray;
}

/** Codes of one unit of L*. */
export const codesPerLightness = 2.55;

const bytes = (plane: Float32Array): Uint8ClampedArray => {
  const out = new Uint8ClampedArray(plane.length); // rounds and clamps by itself
  for (let i = 0; i < plane.length; i++) out[i] = (plane[i] as number) * codesPerLightness;
  return out;
};

const signed = (plane: Float32Array): Int8Array => {
  const out = new Int8Array(plane.length);
  for (let i = 0; i < plane.length; i++) {
    out[i] = Math.max(-128, Math.min(127, Math.round(plane[i] as number)));
  }
  return out;
};

/** From the simplified planes and the unsimplified lightness; both are left alone. */
export function subjectPlanes(
  { lightness, a, b }: LabPlanes,
  plain: Float32Array,
  size: PixelSize,
): SubjectPlanes {
  return { size, lightness: bytes(lightness), a: signed(a), b: signed(b), plain: bytes(plain) };
}
