import { type Lab, labOfLinear, linearOfLab } from '../../colour/lab.ts';
import { lightnessOfLuminance, luminanceOfLightness } from '../../colour/lightness.ts';
import { defaultPaperLab } from '../colour-of-washes.ts';

export type Light = readonly [red: number, green: number, blue: number];

/**
 * Cameras darken the darks and lighten the lights of a picture: their S-shaped tone curve. Taken back to first
 * order, channel by channel, about middle grey; `strength` 0.35 is a marked curve (own shape, as makers publish
 * none).
 */
export function withoutCurve(linear: number, strength: number): number {
  if (!(linear > 0 && linear < 1)) return linear;
  const v = lightnessOfLuminance(linear) / 100;
  return luminanceOfLightness(100 * (v + strength * v * (1 - v) * (1 - 2 * v)));
}

/**
 * From linear sRGB to what a camera's sensors catch, in daylight, each row of sum 1: mean of the colour matrices raw
 * converters have for five cameras (from memory). White balance is set there: in sRGB itself strong colours would go
 * astray. Below it the way back.
 */
export const sensors = [0.546, 0.354, 0.1, 0.006, 0.792, 0.202, -0.015, 0.209, 0.806];
export const fromSensors = [
  1.8399, -0.8161, -0.0238, -0.0243, 1.3628, -0.3385, 0.0405, -0.3686, 1.3281,
];

/** Row `c` of a matrix of 3 x 3 times a vector. */
export const rowTimes = (matrix: readonly number[], c: number, [x, y, z]: Light): number =>
  matrix[3 * c] * x + matrix[3 * c + 1] * y + matrix[3 * c + 2] * z;

/** What a camera's sensors catch of linear sRGB light. */
export const sensed = (light: Light): Light => [
  rowTimes(sensors, 0, light),
  rowTimes(sensors, 1, light),
  rowTimes(sensors, 2, light),
];

/** The linear sRGB light of what sensors have caught. */
export const unsensed = (caught: Light): Light => [
  rowTimes(fromSensors, 0, caught),
  rowTimes(fromSensors, 1, caught),
  rowTimes(fromSensors, 2, caught),
];

const defaultPaperLight = linearOfLab(defaultPaperLab);
const defaultPaperSensed = sensed(defaultPaperLight);

const straighten = ([red, green, blue]: Light, curve: number): Light => [
  withoutCurve(red, curve),
  withoutCurve(green, curve),
  withoutCurve(blue, curve),
];

/**
 * The colour (Lab, D65, 2 degree) of linear `light` in the place of which bare paper would have the light `paper`: the
 * tone curve and the light on the sheet are taken out (sensor by sensor, as von Kries for the eye), and bare paper is
 * brought to the default paper.
 */
export function labOnPaper(light: Light, paper: Light, curve: number): Lab {
  const seen = sensed(straighten(light, curve));
  const white = sensed(straighten(paper, curve));
  const share = (c: number): number => (seen[c] / white[c]) * defaultPaperSensed[c];
  const even: Light = [share(0), share(1), share(2)];
  return labOfLinear(...unsensed(even));
}

/** The tone curve of a camera nobody has looked at, and how far one may be from it (own). */
export const usualCurve = 0.15;
export const spreadOfCurves = 0.2;
/** Waterproof black ink, L*: carbon black in a thin film (own), and how far one may be from it. */
export const blackInk = 24;
const spreadOfInk = 3;
/** By so much black ink becomes lighter where a curve of strength 1 is taken back, L* (middle of usual photos). */
const liftOfInk = 11;

/** How far the strength of a camera's tone curve may be off; less where a bare black line was seen. */
export const curveDoubt = (lineSeen: boolean): number =>
  1 / Math.hypot(1 / spreadOfCurves, lineSeen ? liftOfInk / spreadOfInk : 0);

/** Beyond these strengths lies no camera. */
const curves = Array.from({ length: 121 }, (_, n) => -0.3 + n / 100);

/**
 * Strength of the likeliest tone curve: the usual one, or where a bare black line was seen that which brings it to the
 * lightness of black ink, each as far as it is to be trusted.
 */
export function toneCurve(black: { light: Light; paper: Light } | null): number {
  if (!black) return usualCurve;
  const cost = (strength: number): number => {
    const [lightness] = labOnPaper(black.light, black.paper, strength);
    return (
      ((lightness - blackInk) / spreadOfInk) ** 2 + ((strength - usualCurve) / spreadOfCurves) ** 2
    );
  };
  return curves.reduce((least, each) => (cost(each) < cost(least) ? each : least));
}

/** Usual light of bare paper in a photo, linear. */
const usualPaperLight: Light = [0.7, 0.7, 0.7];
/**
 * Colours of all patches of a paint are off together, as sensors are no eyes: chroma, hue in radians, lightness in L*
 * where chroma is 50. Greens and blues suffer most (own: ladders of 178 paints and mixes photographed by 40 simulated
 * cameras with bell-shaped sensors and no tone curve; root of the mean square over the cameras).
 */
const warm = { chroma: 0.09, hue: 0.06, lightness: 1.1 };
const cool = { chroma: 0.15, hue: 0.16, lightness: 3.5 };
/** The hue sensors see worst, greenish blue, degrees. */
const worstHue = (225 * Math.PI) / 180;

/** How far colours of a hue may be off, between warm and cool. */
function colourDoubt([, a, b]: Lab, what: keyof typeof warm): number {
  const part = Math.max(0, Math.cos(Math.atan2(b, a) - worstHue)) ** 2;
  return warm[what] + part * (cool[what] - warm[what]);
}

/**
 * What is wrong with all colours of a photo together: each list is them with one fault of the camera, one standard
 * deviation of it: tone curve, chroma, hue, lightness of colours.
 */
export function withCameraFaults(labs: readonly Lab[], lineSeen: boolean): Lab[][] {
  const curved = (lab: Lab): Lab => {
    const [red, green, blue] = linearOfLab(lab);
    const light: Light = [
      (red / defaultPaperLight[0]) * usualPaperLight[0],
      (green / defaultPaperLight[1]) * usualPaperLight[1],
      (blue / defaultPaperLight[2]) * usualPaperLight[2],
    ];
    return labOnPaper(light, usualPaperLight, curveDoubt(lineSeen));
  };
  const strengthened = (lab: Lab): Lab => {
    const times = 1 + colourDoubt(lab, 'chroma');
    return [lab[0], times * lab[1], times * lab[2]];
  };
  const turned = (lab: Lab): Lab => {
    const [sin, cos] = [Math.sin(colourDoubt(lab, 'hue')), Math.cos(colourDoubt(lab, 'hue'))];
    return [lab[0], lab[1] * cos - lab[2] * sin, lab[1] * sin + lab[2] * cos];
  };
  const lightened = (lab: Lab): Lab => {
    const off = (colourDoubt(lab, 'lightness') * Math.hypot(lab[1], lab[2])) / 50;
    return [lab[0] + off, lab[1], lab[2]];
  };
  return [curved, strengthened, turned, lightened].map((fault) => labs.map(fault));
}
