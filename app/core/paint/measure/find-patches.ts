import type { Point } from '../../colour/lab.ts';
import { runToEnd } from '../../numeric/run-to-end.ts';
import { labelRuns } from '../../raster/label-shapes.ts';
import { emptyRaster, type LinearRaster } from '../../raster/linear-raster.ts';
import type { PixelSize } from '../../raster/size.ts';
import { burntPaper, noPaper, noPatches, tooDark } from '../../words/faults.ts';
import { defaultPaperLab } from '../colour-of-washes.ts';
import { toneCurve } from './camera.ts';
import type { FramedColour, MeasuredPhoto, PatchFrame } from './measured-photo.ts';
import {
  framedColour,
  framedLight,
  type PaperLight,
  paperLab,
  paperLight,
  paperTiles,
  type Tile,
} from './paper-light.ts';
import { frameOfBox, type PaintedPixels, type PixelBox, partOverLine } from './part-over-line.ts';

/**
 * The raster by whole blocks of pixels, each block its mean; a rest at the right and below is left
 * out.
 */
function smallRaster(raster: LinearRaster, block: number): LinearRaster {
  const width = Math.max(1, Math.floor(raster.width / block));
  const height = Math.max(1, Math.floor(raster.height / block));
  const small = emptyRaster(width, height);
  for (const name of ['red', 'green', 'blue'] as const) {
    const from = raster[name];
    const to = small[name];
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        let sum = 0;
        for (let row = 0; row < block; row++) {
          const start = (y * block + row) * raster.width + x * block;
          for (let column = 0; column < block; column++) sum += from[start + column];
        }
        to[y * width + x] = sum / (block * block);
      }
    }
  }
  return small;
}

/** A pixel counts as painted if it differs from bare paper by more than this Lab distance (own). */
const paintedDistance = 5;
/**
 * A patch fills at least this share of its bounding box: one turned by up to 15 degrees still does.
 */
const leastFilling = 0.5;
const smallestShare = 0.0012;
const largestShare = 0.3;
const longest = 7;

/**
 * 1 where painted, row by row. One pixel is taken off all round and put on again, so that lines
 * vanish and patches stay.
 */
function paintedMask(lab: Float32Array, width: number, height: number): Uint8Array {
  const count = width * height;
  const mask = new Uint8Array(count);
  for (let p = 0; p < count; p++) {
    const off = Math.hypot(
      lab[p] - defaultPaperLab[0],
      lab[count + p] - defaultPaperLab[1],
      lab[2 * count + p] - defaultPaperLab[2],
    );
    mask[p] = off > paintedDistance ? 1 : 0;
  }
  return spread(spread(mask, width, height, 0), width, height, 1);
}

/** Every pixel with a neighbour of that kind becomes of that kind. */
function spread(mask: Uint8Array, width: number, height: number, kind: 0 | 1): Uint8Array {
  const out = mask.slice();
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const p = y * width + x;
      const beside =
        (x > 0 && mask[p - 1] === kind) ||
        (x + 1 < width && mask[p + 1] === kind) ||
        (y > 0 && mask[p - width] === kind) ||
        (y + 1 < height && mask[p + width] === kind);
      if (beside) out[p] = kind;
    }
  }
  return out;
}

interface Area {
  left: number;
  top: number;
  right: number;
  bottom: number;
  readonly count: number;
}

/** Connected painted areas (1 in the mask) by their bounding boxes. */
function connectedAreas(mask: Uint8Array, size: PixelSize): Area[] {
  const { runs, shapes, kinds, areasPx } = runToEnd(labelRuns(mask, size));
  const areas = Array.from(
    areasPx,
    (count): Area => ({ left: size.width, top: size.height, right: 0, bottom: 0, count }),
  );
  for (let run = 0; run < shapes.length; run++) {
    const area = areas[shapes[run]];
    const start = runs.starts[run];
    const y = Math.floor(start / size.width);
    area.left = Math.min(area.left, start - y * size.width);
    area.right = Math.max(area.right, runs.starts[run + 1] - 1 - y * size.width);
    area.top = Math.min(area.top, y);
    area.bottom = Math.max(area.bottom, y);
  }
  return areas.filter((_, shape) => kinds[shape] === 1);
}

/**
 * Boxes round the painted patches of a small raster, in no order: connected, mostly full, no line, not cut off by the
 * photo's edge.
 */
function paintedAreas({ mask, width, height }: PaintedPixels): PixelBox[] {
  const all = width * height;
  return connectedAreas(mask, { width, height })
    .filter(({ left, top, right, bottom, count }) => {
      const across = right - left + 1;
      const down = bottom - top + 1;
      const cutOff = left === 0 || top === 0 || right === width - 1 || bottom === height - 1;
      return (
        !cutOff &&
        count > smallestShare * all &&
        count < largestShare * all &&
        count > leastFilling * across * down &&
        Math.max(across / down, down / across) < longest
      );
    })
    .map(({ left, top, right, bottom }) => ({
      left,
      top,
      width: right - left + 1,
      height: bottom - top + 1,
    }));
}

/** A frame that was found, and what its paint lies on. */
type FoundFrame = Pick<FramedColour, 'frame' | 'ground'>;

/** The frames of an area: one, or three where it is a patch across a black line. */
function framesOf(pixels: PaintedPixels, box: PixelBox): FoundFrame[] {
  const parted = partOverLine(pixels, box);
  const found = (part: PixelBox, ground: FoundFrame['ground']): FoundFrame => ({
    frame: frameOfBox(part, pixels),
    ground,
  });
  if (!parted) return [found(box, 'paper')];
  return [
    found(parted.paper, 'paper'),
    found(parted.over, 'line'),
    found(parted.line, 'bare line'),
  ];
}

/** The frames on a small raster in reading order, those of one patch one after the other. */
function foundFrames(raster: LinearRaster, light: PaperLight): FoundFrame[] {
  const { width, height } = raster;
  const lab = paperLab(raster, light, toneCurve(null));
  const mask = paintedMask(lab, width, height);
  const pixels = { width, height, mask, lightness: lab.subarray(0, width * height) };
  return readingOrder(paintedAreas(pixels)).flatMap((box) => framesOf(pixels, box));
}

const middle = ({ top, height }: PixelBox): number => top + height / 2;

/**
 * Boxes row by row from above, each row from the left. A row is followed from box to box, so that a sheet a little
 * turned keeps its rows.
 */
function readingOrder(boxes: readonly PixelBox[]): PixelBox[] {
  const rows: PixelBox[][] = [];
  for (const frame of [...boxes].sort((one, two) => one.left - two.left)) {
    const near = rows
      .map((row) => ({ row, last: row[row.length - 1] }))
      .filter(
        ({ last }) =>
          Math.abs(middle(last) - middle(frame)) < 0.6 * Math.max(last.height, frame.height) &&
          last.left + last.width <= frame.left + 0.3 * frame.width,
      )
      .sort(
        (one, two) =>
          Math.abs(middle(one.last) - middle(frame)) - Math.abs(middle(two.last) - middle(frame)),
      )[0];
    if (near) near.row.push(frame);
    else rows.push([frame]);
  }
  const heightOf = (row: readonly PixelBox[]): number =>
    row.reduce((sum, frame) => sum + middle(frame), 0) / row.length;
  return rows.sort((one, two) => heightOf(one) - heightOf(two)).flat();
}

/**
 * Patches are looked for at about this long side, px: grain and noise are gone, patches are not.
 */
const searchLongSidePx = 320;
/** More areas than this are no patches: speckle or a pattern. */
const mostPatches = 24;
const papersShown = 8;
/** Paper darker than this in linear light leaves too little for the darks. */
const darkestPaper = 0.12;
const burntOut = 0.985;

function checkLight({ paper }: PaperLight): void {
  const levels = paper.map(({ logs }) => Math.exp(Math.max(...logs))).sort((a, b) => a - b);
  const middle = levels[levels.length >> 1] ?? 0;
  if (middle < darkestPaper) {
    throw new RangeError(tooDark);
  }
  if (middle > burntOut) {
    throw new RangeError(burntPaper);
  }
}

/** Some of the places taken for paper, far from each other. */
function shownPapers(tiles: readonly Tile[]): Point[] {
  const chosen: Point[] = [];
  const apart = ([x, y]: Point): number =>
    Math.min(2, ...chosen.map(([x2, y2]) => Math.hypot(x - x2, y - y2)));
  while (chosen.length < Math.min(papersShown, tiles.length)) {
    const next = tiles.reduce((far, tile) => (apart(tile.place) > apart(far.place) ? tile : far));
    chosen.push(next.place);
  }
  return chosen;
}

const covers = (frame: PatchFrame, [x, y]: Point): boolean =>
  x > frame.left && x < frame.left + frame.width && y > frame.top && y < frame.top + frame.height;

/**
 * Measures the painted patches on a photo of a sheet. `frames` are hers, the one of them that holds a bare black line
 * by its place in `bareLine`; or null to find them. The light on the sheet (falling off, coloured) is fitted to its
 * bare paper and taken out, the camera's tone curve by the black line. Throws a RangeError with a painter's sentence
 * where there is no bare paper, or no patch.
 */
export function findPatches(
  raster: LinearRaster,
  frames: readonly PatchFrame[] | null,
  bareLine: number | null = null,
): MeasuredPhoto {
  const block = Math.max(1, Math.round(Math.max(raster.width, raster.height) / searchLongSidePx));
  const small = smallRaster(raster, block);
  const tiles = paperTiles(small).filter(
    ({ place }) => !frames?.some((frame) => covers(frame, place)),
  );
  const light = paperLight(tiles);
  if (!light) throw new RangeError(noPaper);
  checkLight(light);
  const found =
    frames?.map((frame, n): FoundFrame => {
      return { frame, ground: n === bareLine ? 'bare line' : 'paper' };
    }) ?? foundFrames(small, light);
  if (found.length === 0 || found.length > mostPatches) {
    throw new RangeError(noPatches);
  }
  const black = found.find(({ ground }) => ground === 'bare line');
  const curve = toneCurve(black ? framedLight(raster, light, black.frame) : null);
  return {
    patches: found.map(({ frame, ground }) => ({
      ...framedColour(raster, light, curve, frame),
      ground,
    })),
    paper: shownPapers(light.paper),
  };
}
