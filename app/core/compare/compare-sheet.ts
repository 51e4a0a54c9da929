import type { Lab, Point } from '../colour/lab.ts';
import { linearOfCode } from '../colour/srgb.ts';
import type { Checkpoint } from '../palette/checkpoint.ts';
import type { WashPlan } from '../plan/plan.ts';
import {
  emptyRaster,
  type LabPlanes,
  type LinearRaster,
  labInPlace,
} from '../raster/linear-raster.ts';
import { shrinkSlots } from '../raster/paint-slots.ts';
import { computePxPerMm, type PixelSize } from '../raster/size.ts';
import { softBlend, softEdges } from '../reading/edges/soft-blend.ts';
import type { Reading } from '../reading/reading.ts';
import { onTheSheet } from '../reading/tone-range.ts';
import { advise, nearnessIn } from './advise.ts';
import { compareEdges } from './compare-edges.ts';
import {
  type Comparison,
  compareEngine,
  isPainted,
  type LightFacts,
  type PhotoTip,
  type Refusal,
  type SheetWetness,
} from './comparison.ts';
import type { SheetLight } from './even-light.ts';
import { drawExpectedSheet } from './expected-sheet.ts';
import { findSheet, type SheetPlace } from './find-sheet.ts';
import { type Corners, composed, cornersOf, homographyOf, scaledCorners } from './homography.ts';
import { judgeBands, judgeShapes, judgeWhites, judgeWhole } from './judge.ts';
import type { SquaredSheet } from './light-cells.ts';
import { measureLight } from './measure-light.ts';
import { type MeasuredSheet, pixelStates } from './measured-sheet.ts';
import { shapeDifferences, shapesOf } from './shape-differences.ts';
import { squareUp } from './square-up.ts';

/** Long side of the sheet as it is compared, px: some 2 px a millimetre of a quarter sheet. */
const comparedPx = 800;
/** Width of the verge round the sheet that is looked at too, mm: her border, if there is one. */
const vergeMm = 8;

/** L* by which a wash dries lighter from satin on, about (own; 75 masstones: 2.3, see paint/wet-look.ts). */
const satinShift = 2.5;

export interface CompareRequest {
  /** The photo of the sheet, upright, long side about 1600 px. */
  readonly photo: LinearRaster;
  readonly reading: Reading;
  /** Slot of every pixel of the reading's raster. */
  readonly slotMap: Uint8Array;
  readonly plan: WashPlan;
  /** Number of the plan's step that was done last. */
  readonly step: number;
  /** Hers: shares of the photo's sides, clockwise from the sheet's own upper left; left out: they are sought. */
  readonly corners?: Corners;
  readonly wetness?: SheetWetness;
  /** Simplified lightness of the reference, 255 is L* 100, of any size; left out: the whole is not held against it. */
  readonly grey?: PixelSize & { readonly map: Uint8Array };
  /** Places that she says are bare paper, 0..1 of the sheet or a little beyond, on its border; white besides those of the plan. */
  readonly bare?: readonly Point[];
}

/** What the screens draw from: the squared sheet and the expected one, both of that size. */
export interface ComparedPictures {
  readonly size: PixelSize;
  readonly slotMap: Uint8Array;
  /** The expected sheet, RGBA. */
  readonly expected: Uint8ClampedArray<ArrayBuffer>;
  readonly measured: MeasuredSheet;
  /** Connected shape of every pixel, as `ShapeVerdict.shapes` numbers them. */
  readonly shapes: Int32Array;
}

export interface Compared {
  readonly comparison: Comparison;
  /** Null where nothing is judged. */
  readonly pictures: ComparedPictures | null;
}

function linearOf(rgba: Uint8ClampedArray, { width, height }: PixelSize): LinearRaster {
  const raster = emptyRaster(width, height);
  for (let i = 0, from = 0; i < width * height; i++, from += 4) {
    raster.red[i] = linearOfCode[rgba[from]];
    raster.green[i] = linearOfCode[rgba[from + 1]];
    raster.blue[i] = linearOfCode[rgba[from + 2]];
  }
  return raster;
}

/** The squared sheet with the verge round it. */
function squaredSheet(
  photo: LinearRaster,
  corners: Corners,
  size: PixelSize,
  margin: number,
): SquaredSheet | null {
  const onSheet = homographyOf(
    cornersOf(size.width, size.height),
    scaledCorners(corners, photo.width, photo.height),
  );
  if (!onSheet) return null;
  const toPhoto = composed(onSheet, Float64Array.of(1, 0, -margin, 0, 1, -margin, 0, 0, 1));
  const whole = { width: size.width + 2 * margin, height: size.height + 2 * margin };
  return { raster: squareUp(photo, toPhoto, whole), margin, size };
}

/** Light at the darkest place as a share of that at the brightest, over the sheet. */
function evennessOf({ bright }: SheetLight, { width, height }: PixelSize): number {
  const half = Math.max(width, height) / 2;
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let row = 0; row <= 8; row++)
    for (let column = 0; column <= 8; column++) {
      const x = ((column / 8 - 0.5) * width) / half;
      const y = ((row / 8 - 0.5) * height) / half;
      const level =
        bright[0] +
        bright[1] * x +
        bright[2] * y +
        bright[3] * x * x +
        bright[4] * x * y +
        bright[5] * y * y;
      least = Math.min(least, level);
      most = Math.max(most, level);
    }
  return Math.exp(least - most);
}

function lightFacts(light: SheetLight, { states }: MeasuredSheet, size: PixelSize): LightFacts {
  const counts = new Float64Array(Object.keys(pixelStates).length);
  for (const state of states) counts[state]++;
  const share = (state: number): number => counts[state] / states.length;
  const { paperShare, vergeShare, curve, doubt } = light;
  return {
    paperShare,
    vergeShare,
    evenness: evennessOf(light, size),
    curve,
    doubt,
    missing: share(pixelStates.missing),
    clipped: share(pixelStates.clipped),
    glare: share(pixelStates.glare),
    shadow: share(pixelStates.shadow),
  };
}

/** From these on it is worth saying how to photograph better; shares of the sheet (own). */
const toldFrom = { left: 0.02, uneven: 0.75, colour: 0.5, paper: 0.002, verge: 0.15 } as const;

function tipsFor(facts: LightFacts, light: SheetLight, coarse: boolean): PhotoTip[] {
  const told: readonly (readonly [PhotoTip, boolean])[] = [
    ['off-the-photo', facts.missing > toldFrom.left],
    ['clipped', facts.clipped > toldFrom.left],
    ['glare', facts.glare > toldFrom.left],
    ['shadow', facts.shadow > toldFrom.left],
    ['no-bare-paper', facts.paperShare < toldFrom.paper && facts.vergeShare < toldFrom.verge],
    ['uneven', facts.evenness < toldFrom.uneven],
    ['coloured-light', Math.abs(light.red[0] - light.blue[0]) > toldFrom.colour],
    ['coarse', coarse],
  ];
  return told.filter(([, is]) => is).map(([tip]) => tip);
}

/** A sheet of the photo that is coarser than this is not seen well, px of the photo on a mm (own). */
const coarseUnder = 1.2;

function isCoarse({ corners }: SheetPlace, photo: PixelSize, sheet: Reading['sheet']): boolean {
  const [a, b] = scaledCorners(corners, photo.width, photo.height);
  return Math.hypot(b[0] - a[0], b[1] - a[1]) / sheet.widthMm < coarseUnder;
}

/** From satin to dry paint grows lighter; bare paper does not. */
function dried(measured: MeasuredSheet, expected: LabPlanes, paper: Lab): void {
  for (let i = 0; i < measured.lightness.length; i++)
    if (expected.lightness[i] < paper[0] - 2) measured.lightness[i] += satinShift;
}

/** The reference's lightness at a smaller size, as the sheet is to have it. */
function wantedLightness(
  grey: NonNullable<CompareRequest['grey']>,
  size: PixelSize,
  plan: WashPlan,
): Float32Array {
  const { map } = grey;
  const out = new Float32Array(size.width * size.height);
  const levels = Float32Array.from({ length: 256 }, (_, code) =>
    onTheSheet(plan.range, code / 2.55),
  );
  for (let y = 0, i = 0; y < size.height; y++) {
    const row = Math.floor(((y + 0.5) * grey.height) / size.height) * grey.width;
    for (let x = 0; x < size.width; x++, i++)
      out[i] = levels[map[row + Math.floor(((x + 0.5) * grey.width) / size.width)]];
  }
  return out;
}

/**
 * A photo of the sheet beside what the plan expects of it after a step: found, squared up, its light made even, judged
 * shape by shape. Nothing is judged where it is not sure that it is that sheet, or while it shines. Lets messages in
 * between its parts.
 */
export async function compareSheet(
  request: CompareRequest,
  checkpoint: Checkpoint,
): Promise<Compared> {
  const { photo, reading, plan, wetness = 'dry' } = request;
  const refuse = (refused: Refusal, place: SheetPlace | null): Compared => ({
    comparison: { engine: compareEngine, step: request.step, refused, place },
    pictures: null,
  });
  const step = plan.steps.find(({ n }) => n === request.step);
  if (wetness === 'shiny') return refuse('shiny', null);
  if (!step || !isPainted(step, plan.paper)) return refuse('nothing-painted', null);
  const { width, height } = reading.raster;
  const { slotMap, ...size } = shrinkSlots(request.slotMap, width, height, comparedPx);
  await checkpoint(0.05);
  const soft = softEdges(reading.edges ?? [], size);
  await checkpoint(0.1);
  const blend = softBlend(slotMap, size, soft);
  await checkpoint(0.15);
  const expected = drawExpectedSheet(reading, slotMap, blend, size, step);
  await checkpoint(0.2);
  const finding = (part: number): Promise<void> => checkpoint(0.2 + 0.4 * part);
  const drawn = linearOf(expected, size);
  const place = await findSheet(photo, drawn, finding, request.corners);
  await checkpoint(0.6);
  if (!place) return refuse('no-sheet', null);
  if (place.sureness === 'not sure') return refuse('not-sure', place);
  const margin = Math.round(vergeMm * computePxPerMm(size, reading.sheet));
  const squared = squaredSheet(photo, place.corners, size, margin);
  if (!squared) return refuse('no-sheet', place);
  await checkpoint(0.7);
  const labs = labInPlace(drawn);
  const lighting = (part: number): Promise<void> => checkpoint(0.7 + 0.18 * part);
  const lit = await measureLight(squared, labs, slotMap, plan.paper, request.bare, lighting);
  if (!lit) return refuse('no-light', place);
  const { light, measured } = lit;
  await checkpoint(0.88);
  if (wetness === 'satin') dried(measured, labs, plan.paper);
  const map = shapesOf(slotMap, size);
  const shapes = judgeShapes(shapeDifferences(map, size, labs, measured), plan);
  await checkpoint(0.92);
  const crisp = drawExpectedSheet(reading, slotMap, softBlend(slotMap, size, []), size, step);
  const crispLabs = labInPlace(linearOf(crisp, size));
  await checkpoint(0.94);
  const edges = await compareEdges(
    reading.edges ?? [],
    labs.lightness,
    crispLabs.lightness,
    measured,
    size,
    reading.sheet,
    () => checkpoint(0.95),
  );
  await checkpoint(0.98);
  const reference = request.grey ? wantedLightness(request.grey, size, plan) : null;
  const facts = lightFacts(light, measured, size);
  const nearness = nearnessIn(reading, plan, slotMap, size);
  return {
    comparison: {
      engine: compareEngine,
      step: step.n,
      refused: null,
      place,
      light: facts,
      tips: tipsFor(facts, light, isCoarse(place, photo, reading.sheet)),
      shapes,
      bands: judgeBands(shapes),
      whites: judgeWhites(shapes, plan, reading.sheet),
      edges,
      whole: judgeWhole(shapes, labs, measured, reference, size, reading.sheet),
      advice: advise(shapes, edges, reading, plan, step.n, nearness),
    },
    pictures: { size, slotMap, expected, measured, shapes: map.labels },
  };
}
