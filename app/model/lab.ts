/** CIE L*a*b*, D65 / 2 degree observer (ISO/CIE 11664-4). L* 0..100, 100 is white. */
export type Lab = readonly [lightness: number, a: number, b: number];

/** Red, green, blue, 0..255, encoded sRGB (IEC 61966-2-1). */
export type Rgb = readonly [number, number, number];

/** A point of the upright photo: 0..1 from its left and from its top. */
export type Point = readonly [x: number, y: number];

/** A range that is honest about not knowing: [low, high]. */
export type Range = readonly [low: number, high: number];
