import { type Lab, type Point, rgbOfLab } from '../../../app/core/colour/lab.ts';
import { runToEnd } from '../../../app/core/numeric/run-to-end.ts';
import { lightnessPlane } from '../../../app/core/raster/linear-raster.ts';
import { simplify } from '../../../app/core/raster/simplify.ts';
import type { SubjectStroke } from '../../../app/core/reading/subject/subject.ts';
import { subjectPlanes } from '../../../app/core/reading/subject/subject-colours.ts';
import { type Opened, painted } from './rasters.ts';
import { seeded } from './seeded.ts';

/** How far out the outline lies in a direction, as a share of the picture's height. */
export type Outline = (angle: number) => number;

export const outlines = {
  round: () => 0.3,
  lobed: (angle: number) => 0.28 + 0.06 * Math.sin(3 * angle + 1) + 0.03 * Math.cos(7 * angle),
  waisted: (angle: number) => 0.2 + 0.12 * Math.abs(Math.cos(angle)),
} as const satisfies Record<string, Outline>;

const [middleX, middleY] = [0.52, 0.5];

export interface MadePicture {
  readonly width: number;
  readonly height: number;
  readonly outline: Outline;
  /** Sigma of the border's blur, px; 0 for hard. */
  readonly softPx: number;
  readonly subject: (x: number, y: number) => Lab;
  readonly ground: (x: number, y: number) => Lab;
  /** Noise added to every lightness, L*, as a uniform +- amount. */
  readonly noise?: number;
}

/** Distance outside of the outline along the ray from the middle, px; below 0 inside. */
function outside({ width, height, outline }: MadePicture, x: number, y: number): number {
  const dx = x + 0.5 - middleX * width;
  const dy = y + 0.5 - middleY * height;
  return Math.hypot(dx, dy) - outline(Math.atan2(dy, dx)) * height;
}

/** Most of a picture is of one colour, pixel after pixel. */
function codesOnceEach(): (lab: Lab) => readonly [number, number, number] {
  let last: Lab = [Number.NaN, 0, 0];
  let codes = rgbOfLab([0, 0, 0]);
  return (lab) => {
    if (lab.every((part, i) => part === last[i])) return codes;
    last = lab;
    codes = rgbOfLab(lab);
    return codes;
  };
}

/** Known picture: 1 in `truth` where the subject lies. A soft border is at its middle. */
export function madePicture(made: MadePicture): { opened: Opened; truth: Uint8Array } {
  const { width, height, softPx, noise = 0 } = made;
  const random = seeded(7);
  const truth = new Uint8Array(width * height);
  const codesOf = codesOnceEach();
  const opened = painted(width, height, (x, y) => {
    const out = outside(made, x, y);
    if (out < 0) truth[y * width + x] = 1;
    // A logistic step is close to a blurred one (at most 1 % of it off); far from it one side is all.
    const isSoft = Math.abs(out) < 9 * softPx;
    const share = isSoft ? 1 / (1 + Math.exp((1.702 * out) / softPx)) : out < 0 ? 1 : 0;
    const [l, a, b] = made.subject(x / width, y / height);
    const [m, c, d] = made.ground(x / width, y / height);
    const stray = noise * (2 * random() - 1);
    const mix = (own: number, other: number): number => share * own + (1 - share) * other;
    return codesOf([Math.max(0, Math.min(100, mix(l, m) + stray)), mix(a, c), mix(b, d)]);
  });
  return { opened, truth };
}

/** A circle drawn round it by hand: `gap` outside, as a share of the outline, unsteady by a third of that. */
export function looseCircle({ width, height, outline }: MadePicture, gap: number): SubjectStroke {
  const random = seeded(3);
  const [slow, quick] = [6 * random(), 6 * random()];
  const path = Array.from({ length: 120 }, (_, i): Point => {
    const angle = (i / 120) * 2 * Math.PI - Math.PI;
    const sway = 1 + (Math.sin(2 * angle + slow) + Math.sin(5 * angle + quick)) / 6;
    const radius = outline(angle) * (1 + gap * sway);
    return [
      middleX + (radius * Math.cos(angle) * height) / width,
      middleY + radius * Math.sin(angle),
    ];
  });
  return { mode: 'circle', path, brush: 0 };
}

/** Planes for a quarter sheet lying across. */
export function planesOf({ raster }: Opened, sheetWidthMm = 381) {
  const { width, height } = raster;
  const pxPerMm = width / sheetWidthMm;
  const planes = runToEnd(simplify(raster, pxPerMm));
  const size = { width, height };
  return { planes: subjectPlanes(planes, lightnessPlane(raster), size), pxPerMm };
}

/** Intersection over union. */
export function overlap(one: Uint8Array, other: Uint8Array): number {
  let both = 0;
  let either = 0;
  for (let i = 0; i < one.length; i++) {
    if (one[i] === 1 && other[i] === 1) both++;
    if (one[i] === 1 || other[i] === 1) either++;
  }
  return either > 0 ? both / either : 1;
}

export const plain =
  (...lab: Lab) =>
  (): Lab =>
    lab;
