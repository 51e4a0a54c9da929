import type { PixelSize } from '../../raster/size.ts';
import type { PatchFrame } from './measured-photo.ts';

/** A box of pixels: left, top, width, height. */
export interface PixelBox {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A patch painted across a line: its part on paper, its part over the line, and the bare line beside it. */
export interface PartedPatch {
  readonly paper: PixelBox;
  readonly over: PixelBox;
  readonly line: PixelBox;
}

/** Planes of a small raster: where it is painted, and how light it is (L*). */
export interface PaintedPixels extends PixelSize {
  readonly mask: Uint8Array;
  readonly lightness: Float32Array;
}

/** The line fills at most this share of the patch's height (own). */
const thickestLine = 0.5;
/** It sticks out by at least this many pixels of the small raster, and is as thick. */
const leastTail = 3;
const thinnestLine = 3;
/** A black line is darker than this L*, whatever the light (own). */
const darkLine = 45;
/** Of the breadth and thickness of a part so much is framed: the rest is edge. */
const core = 0.8;

/** A column of an area: where it begins, one past where it ends, and how many painted pixels it has. */
interface Column {
  readonly top: number;
  readonly bottom: number;
  readonly count: number;
}

const medianOf = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0;

/**
 * Parts a painted area (1 in the mask, in `box`) that a level black line runs through and sticks out of; null where
 * there is none. The line may be a little turned: its place in the patch is taken between its two ends.
 */
function partLevel(pixels: PaintedPixels, box: PixelBox): PartedPatch | null {
  const { mask, lightness, width } = pixels;
  const columns = Array.from({ length: box.width }, (_, i): Column => {
    let [top, bottom, count] = [-1, -1, 0];
    for (let y = box.top; y < box.top + box.height; y++) {
      if (mask[y * width + box.left + i] !== 1) continue;
      if (top < 0) top = y;
      bottom = y + 1;
      count++;
    }
    return { top, bottom, count };
  });
  const tall = columns.map(({ count }) => count).toSorted((a, b) => b - a)[box.width >> 2] ?? 0;
  const isTail = ({ count }: Column): boolean => count <= thickestLine * tall;
  const first = columns.findIndex((column) => !isTail(column));
  const last = columns.findLastIndex((column) => !isTail(column));
  // A pixel at each end of a tail is half paint, half paper.
  const tails = [
    { from: 0, to: first },
    { from: last + 1, to: box.width },
  ]
    .filter(({ from, to }) => to - from >= leastTail)
    .map(({ from, to }) => {
      const own = columns.slice(from + 1, to - 1).filter(({ count }) => count > 0);
      const middles = own.map(({ top, bottom }) => (top + bottom) / 2);
      const thickness = medianOf(own.map(({ count }) => count));
      const x = box.left + (from + to) / 2;
      const y = medianOf(middles);
      const light = medianOf(
        Array.from(
          { length: Math.max(0, to - from - 2) },
          (_, n) => lightness[Math.floor(y) * width + box.left + from + 1 + n],
        ),
      );
      return { x, y, thickness, light, length: to - from };
    })
    .filter(({ thickness, light }) => thickness >= thinnestLine && light < darkLine);
  const [one, two = one] = tails;
  const breadth = last - first + 1;
  if (!one || breadth < 2 * leastTail) return null;
  const thickness = Math.min(one.thickness, two.thickness);
  const middle = box.left + first + breadth / 2;
  const part = two === one ? 0 : (middle - one.x) / (two.x - one.x);
  const y = one.y + part * (two.y - one.y);
  const body = columns[Math.floor(first + breadth / 2)];
  const across = { left: middle - (core * breadth) / 2, width: core * breadth };
  const above = y - one.thickness / 2 - 1 - body.top;
  const below = body.bottom - (y + one.thickness / 2 + 1);
  const onPaper = Math.max(above, below);
  if (onPaper < thinnestLine) return null;
  const longer = two.length > one.length ? two : one;
  return {
    paper: { ...across, top: above >= below ? body.top : body.bottom - below, height: onPaper },
    over: { ...across, top: y - (core * thickness) / 2, height: core * thickness },
    line: {
      left: longer.x - (core * longer.length) / 2,
      width: core * longer.length,
      top: longer.y - (core * longer.thickness) / 2,
      height: core * longer.thickness,
    },
  };
}

const turnedBox = ({ left, top, width, height }: PixelBox): PixelBox => ({
  left: top,
  top: left,
  width: height,
  height: width,
});

/** Rows become columns. */
function turnedPixels({ mask, lightness, width, height }: PaintedPixels): PaintedPixels {
  const turned = {
    width: height,
    height: width,
    mask: new Uint8Array(mask.length),
    lightness: new Float32Array(lightness.length),
  };
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      turned.mask[x * height + y] = mask[y * width + x];
      turned.lightness[x * height + y] = lightness[y * width + x];
    }
  }
  return turned;
}

/** Parts a painted area that a black line runs through, level or upright; null where none sticks out of it. */
export function partOverLine(pixels: PaintedPixels, box: PixelBox): PartedPatch | null {
  const level = partLevel(pixels, box);
  if (level) return level;
  const upright = partLevel(turnedPixels(pixels), turnedBox(box));
  return (
    upright && {
      paper: turnedBox(upright.paper),
      over: turnedBox(upright.over),
      line: turnedBox(upright.line),
    }
  );
}

/** A box of pixels as a frame of the photo. */
export const frameOfBox = (box: PixelBox, { width, height }: PixelSize): PatchFrame => ({
  left: box.left / width,
  top: box.top / height,
  width: box.width / width,
  height: box.height / height,
});
