/** CIE L*a*b*, D65 / 2 degree observer (ISO/CIE 11664-4). L* 0..100, 100 is white. */
export type Lab = readonly [lightness: number, a: number, b: number];

/** Red, green, blue, 0..255, encoded sRGB (IEC 61966-2-1). */
export type Rgb = readonly [number, number, number];

/** A point of the upright photo: 0..1 from its left and from its top. */
export type Point = readonly [x: number, y: number];

/** A range that is honest about not knowing: [low, high]. */
export type Range = readonly [low: number, high: number];

const epsilon = 6 / 29;

const undone = (f: number): number => (f > epsilon ? f ** 3 : 3 * epsilon * epsilon * (f - 4 / 29));

function encoded(linear: number): number {
  const light = Math.min(1, Math.max(0, linear));
  const code = light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
  return Math.round(code * 255);
}

/**
 * Lab (D65 / 2 degree) to sRGB bytes; what a screen can't show is clipped channel by channel.
 * White and inverse matrix of IEC 61966-2-1 with the white of its own chromaticities
 * (0.3127, 0.3290), as culori uses them.
 */
export function labToRgb([lightness, a, b]: Lab): Rgb {
  const fy = (lightness + 16) / 116;
  const x = (0.3127 / 0.329) * undone(fy + a / 500);
  const y = undone(fy);
  const z = ((1 - 0.3127 - 0.329) / 0.329) * undone(fy - b / 200);
  return [
    encoded(3.2409699419045226 * x - 1.537383177570094 * y - 0.4986107602930034 * z),
    encoded(-0.9692436362808796 * x + 1.8759675015077202 * y + 0.0415550574071756 * z),
    encoded(0.0556300796969936 * x - 0.2039769588889765 * y + 1.0569715142428786 * z),
  ];
}

/** Colour table for `paintSlots`: 3 bytes a slot. */
export function tableOf(colours: readonly Lab[]): Uint8ClampedArray {
  const table = new Uint8ClampedArray(colours.length * 3);
  colours.forEach((lab, slot) => {
    table.set(labToRgb(lab), slot * 3);
  });
  return table;
}

/** A CSS colour for a Lab colour (D65), clipped to sRGB. */
export function cssColour(lab: Lab): string {
  const [red, green, blue] = labToRgb(lab);
  return `rgb(${red} ${green} ${blue})`;
}

/** The neutral grey of a lightness, L* 0..100. */
export const cssGrey = (lightness: number): string => cssColour([lightness, 0, 0]);

// ISO/CIE 11664-4: the inverse of f, kappa = 24389/27.
const inverse = (f: number): number => (f > 6 / 29 ? f * f * f : ((116 * f - 16) * 27) / 24389);

/** X, Y, Z of a CIE Lab colour, each as a share of the white's. */
export function xyzOfLab([lightness, a, b]: Lab): readonly [x: number, y: number, z: number] {
  const f = (lightness + 16) / 116;
  return [inverse(f + a / 500), inverse(f), inverse(f - b / 200)];
}
