import { p3ToSrgb, srgbToP3 } from '../../colour/display-p3.ts';
import { lightnessOfLinear, luminanceOfLightness } from '../../colour/lightness.ts';
import { lightnessOfOneValue } from '../../limits.ts';
import { distanceToOutline, smoothStep } from '../../raster/distance-map.ts';
import { fillSmoothly } from '../../raster/fill-smoothly.ts';
import { type LinearRaster, setLuminance } from '../../raster/linear-raster.ts';
import { insideStroke, paintStroke } from '../../raster/paint-stroke.ts';
import { onSheetPx, type PixelSize } from '../../raster/size.ts';
import { type Alteration, type CutStroke, checkAlterations } from '../../reference/photo-stroke.ts';

function addArea(to: Uint8Array, area: Uint8Array): void {
  for (let i = 0; i < to.length; i++) if (area[i] === 1) to[i] = 1;
}

function touch(one: Uint8Array, other: Uint8Array): boolean {
  for (let i = 0; i < one.length; i++) if (one[i] === 1 && other[i] === 1) return true;
  return false;
}

/**
 * Paints over the working raster, in place and in order, what she wants otherwise than in the photo;
 * without alterations nothing is touched. What is left out is filled together, as late as what is laid
 * over it allows: a thing taken out in several strokes leaves nothing of itself between them. Throws a
 * RangeError for strokes that are none.
 */
export function* alterRaster(
  raster: LinearRaster,
  alterations: readonly Alteration[],
  pxPerMm: number,
): Generator<void, void> {
  checkAlterations(alterations);
  const size: PixelSize = { width: raster.width, height: raster.height };
  let waiting: Uint8Array | null = null;
  for (const alteration of alterations) {
    const area = strokeCover(alteration, size);
    yield;
    if (alteration.change === 'leave-out') {
      if (waiting) addArea(waiting, area);
      else waiting = area;
      continue;
    }
    if (waiting && touch(waiting, area)) {
      yield* leaveOut(raster, waiting, pxPerMm);
      waiting = null;
    }
    const by = alteration.change === 'lighter' ? lightnessOfOneValue : -lightnessOfOneValue;
    yield* shiftLightness(raster, area, by, pxPerMm);
  }
  if (waiting) yield* leaveOut(raster, waiting, pxPerMm);
}

/** 1 for every pixel her brush went over, or within the closed line where the brush is 0. */
function strokeCover({ path, brush }: CutStroke, size: PixelSize): Uint8Array {
  if (brush === 0) return insideStroke(path, size);
  const area = new Uint8Array(size.width * size.height);
  const radius = Math.max(0.5, (brush * Math.max(size.width, size.height)) / 2);
  paintStroke(area, size, path, radius, 1);
  return area;
}

/** A thing's border is blurred and her hand unsteady: so much more is left out, mm on the sheet. */
const moreMm = 1;

/** 1 where a pixel lies outside of the area and farther than `more` px from it. */
function farFrom(inside: Uint8Array, distance: Float32Array, more: number): Uint8Array {
  const far = new Uint8Array(inside.length);
  for (let i = 0; i < far.length; i++) {
    far[i] = inside[i] === 0 && distance[i] > more ? 1 : 0;
  }
  return far;
}

function putBack(
  into: Float32Array,
  width: number,
  box: Box,
  filled: Float32Array,
  known: Uint8Array,
): void {
  for (let y = 0, i = 0; y < box.height; y++) {
    const row = (box.top + y) * width + box.left;
    for (let x = 0; x < box.width; x++, i++) {
      if (known[i] === 0) into[row + x] = filled[i];
    }
  }
}

/**
 * Fills an area (1 in `area`) of the raster, in place, as if what surrounds it went on there, in linear
 * light. A whole picture has nothing round it and stays as it is.
 */
function* leaveOut(raster: LinearRaster, area: Uint8Array, pxPerMm: number): Generator<void, void> {
  const size: PixelSize = { width: raster.width, height: raster.height };
  const more = onSheetPx(moreMm, pxPerMm, Math.max(size.width, size.height));
  const margin = Math.ceil(more) + 1;
  const box = areaBox(area, size, margin);
  if (!box) return;
  const cells = box.width * box.height;
  const inside = cutOut(area, size.width, box, new Uint8Array(cells));
  const distance = distanceToOutline(inside, box, more + 0.5);
  const known = farFrom(inside, distance, more);
  if (!known.includes(1)) return;
  yield;
  const whole = [raster.red, raster.green, raster.blue];
  const planes = whole.map((plane) => cutOut(plane, size.width, box, new Float32Array(cells)));
  const [red, green, blue] = planes;
  // Colours beyond sRGB lie in 0..1 of Display P3's own primaries: there the ends are ends.
  const wide = planes.some((plane) => plane.some((light) => light < 0 || light > 1));
  if (wide) srgbToP3({ red, green, blue }, 0, cells);
  yield* fillSmoothly({ ...box, known, planes });
  yield;
  planes.forEach(holdInRange);
  if (wide) p3ToSrgb({ red, green, blue }, 0, cells);
  planes.forEach((plane, p) => {
    putBack(whole[p], size.width, box, plane, known);
  });
}

/** Over-relaxed values may stray past the ends by a hair. */
function holdInRange(plane: Float32Array): void {
  for (let i = 0; i < plane.length; i++) plane[i] = Math.max(0, Math.min(1, plane[i]));
}

/** Half the width over which the change sets in, mm on the sheet: softer than any edge is taken for hard. */
const halfSoftMm = 1.5;

interface Shift {
  /** 1 for the pixels of the box that lie in the area, and how far each is from its outline, px. */
  readonly inside: Uint8Array;
  readonly distance: Float32Array;
  readonly soft: number;
  /** L*. */
  readonly by: number;
}

/** A loop of its own: within a generator it would run many times slower (V8). */
function shiftBox(raster: LinearRaster, box: Box, { inside, distance, soft, by }: Shift): void {
  const { red, green, blue } = raster;
  for (let y = 0, cell = 0; y < box.height; y++) {
    const row = (box.top + y) * raster.width + box.left;
    for (let i = row; i < row + box.width; i++, cell++) {
      const away = distance[cell] / soft;
      const share = smoothStep(inside[cell] === 1 ? (1 + away) / 2 : (1 - away) / 2);
      if (share === 0) continue;
      const was = lightnessOfLinear(red[i], green[i], blue[i]);
      const lightness = Math.max(0, Math.min(100, was + share * by));
      if (lightness !== was) setLuminance(raster, i, luminanceOfLightness(lightness));
    }
  }
}

/**
 * Moves the lightness of an area (1 in `area`) of the raster by `by` L*, in place; along its outline
 * the change sets in gradually, half of it outside. Colour is kept as far as the range allows.
 */
function* shiftLightness(
  raster: LinearRaster,
  area: Uint8Array,
  by: number,
  pxPerMm: number,
): Generator<void, void> {
  const size: PixelSize = { width: raster.width, height: raster.height };
  const soft = onSheetPx(halfSoftMm, pxPerMm, Math.max(size.width, size.height));
  const box = areaBox(area, size, Math.ceil(soft));
  if (!box) return;
  const inside = cutOut(area, size.width, box, new Uint8Array(box.width * box.height));
  const distance = distanceToOutline(inside, box, soft);
  yield;
  shiftBox(raster, box, { inside, distance, soft, by });
}

/** A part of a picture, px. */
interface Box extends PixelSize {
  readonly left: number;
  readonly top: number;
}

/** Where the area's pixels (1 in it) lie, with `margin` px round them as far as the picture goes; null without any. */
function areaBox(area: Uint8Array, { width, height }: PixelSize, margin: number): Box | null {
  let [left, top, right, bottom] = [width, -1, -1, -1];
  for (let y = 0; y < height; y++) {
    const row = area.subarray(y * width, (y + 1) * width);
    const first = row.indexOf(1);
    if (first < 0) continue;
    if (top < 0) top = y;
    bottom = y;
    left = Math.min(left, first);
    right = Math.max(right, row.lastIndexOf(1));
  }
  if (top < 0) return null;
  left = Math.max(0, left - margin);
  top = Math.max(0, top - margin);
  right = Math.min(width - 1, right + margin);
  bottom = Math.min(height - 1, bottom + margin);
  return { left, top, width: right - left + 1, height: bottom - top + 1 };
}

/** A plane's part in the box, copied into `into`. */
function cutOut<T extends Uint8Array | Float32Array>(
  plane: T,
  width: number,
  box: Box,
  into: T,
): T {
  for (let y = 0; y < box.height; y++) {
    const start = (box.top + y) * width + box.left;
    into.set(plane.subarray(start, start + box.width), y * box.width);
  }
  return into;
}
