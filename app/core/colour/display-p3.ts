/**
 * Whose primaries encoded channels are of. Both have the white D65 and the transfer curve of sRGB;
 * Display P3 reaches to stronger reds and greens (CSS Color 4, 10.1 and 10.3).
 */
export type RgbSpace = 'srgb' | 'display-p3';

interface RgbPlanes {
  readonly red: Float32Array;
  readonly green: Float32Array;
  readonly blue: Float32Array;
}

/**
 * Turns linear light of the Display P3 primaries into that of the sRGB primaries, in place, for the
 * pixels from .. to - 1. Below 0 or above 1 comes what sRGB can't show; luminance and every CIE
 * colour stay. Product of the matrices of CSS Color 4, 18 (P3 to XYZ, XYZ to sRGB); the blue
 * primary is the same.
 */
export function p3ToSrgb({ red, green, blue }: RgbPlanes, from: number, to: number): void {
  for (let i = from; i < to; i++) {
    const r = red[i];
    const g = green[i];
    const b = blue[i];
    red[i] = 1.2249401762805598 * r - 0.22494017628055996 * g;
    green[i] = -0.04205695470968816 * r + 1.042056954709688 * g;
    blue[i] = -0.019637554590334432 * r - 0.07863604555063189 * g + 1.0982736001409663 * b;
  }
}

/** The way back: linear light of the sRGB primaries into that of the Display P3 primaries. */
export function srgbToP3({ red, green, blue }: RgbPlanes, from: number, to: number): void {
  for (let i = from; i < to; i++) {
    const r = red[i];
    const g = green[i];
    const b = blue[i];
    red[i] = 0.8224619687143623 * r + 0.17753803128563775 * g;
    green[i] = 0.03319419885096162 * r + 0.9668058011490384 * g;
    blue[i] = 0.017082630721120033 * r + 0.07239744066396347 * g + 0.9105199286149165 * b;
  }
}
