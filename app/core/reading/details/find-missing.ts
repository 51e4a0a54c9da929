import { type Lab, tableOf } from '../../colour/lab.ts';
import { linearOfCode } from '../../colour/srgb.ts';
import { blurWithin } from '../../raster/gaussian-blur.ts';
import { emptyRaster, type LabPlanes, labInPlace } from '../../raster/linear-raster.ts';
import { paintSquares, scaledGrid } from '../../raster/paint-squares.ts';
import { Room } from '../../raster/room.ts';
import type { PixelSize } from '../../raster/size.ts';
import type { ColourSquares } from '../colour-squares.ts';
import type { ToneRange } from '../reading.ts';
import { onTheSheet } from '../tone-range.ts';

// All figures of this file: own.
/** From this contrast on something is missing, CIE L*a*b*, where attention gathers and far from it. */
const missingFrom = { near: 4, far: 7.5 } as const;
/** Colour counts less than lightness, the less the stronger it is. */
const colourShare = 0.5;
const colourFall = 0.02;
/** Darker is asked for; that much lighter may still be too dull. */
const lighterAllowed = 2;
/** A light this much over its surroundings may become a sparkle, L*. */
const sparkleFrom = 14;
/** So far beside a border the colours of both its sides are blended, mm. */
const rimMm = 1;
/** Washes of small darks run no finer than this, mm. */
const smoothMm = 6;
/** A square a slot hardly has pixels in counts at least so much. */
const leastShare = 0.01;

// Read once, for the loop: some ways to load a file look imports up each time.
const toLinear = linearOfCode;

/** Kinds of what is missing; 0 is nothing. */
const dark = 1;
export const light = 2;

/** What is missing at every place of a picture, and of which kind. */
export interface Missing {
  readonly size: PixelSize;
  readonly kinds: Uint8Array;
  /** How much it stands out, over what it must at its place. */
  readonly times: Float32Array;
  readonly photo: LabPlanes;
}

/** L*, a*, b* of every row of the squares, smoothed within its slot as a wash is. */
function smoothRows(
  { across, down, sidePx, slots, squares, shares, colours }: ColourSquares,
  pxPerMm: number,
): Lab[] {
  const size = { width: across, height: down };
  const sigma = (smoothMm * pxPerMm) / sidePx;
  const smooth = new Float32Array(colours.length);
  for (const slot of new Set(slots)) {
    const rows = [...slots.keys()].filter((row) => slots[row] === slot);
    const weights = new Float32Array(across * down);
    const planes = [0, 1, 2].map(() => new Float32Array(across * down));
    for (const row of rows) {
      weights[squares[row]] = Math.max(leastShare, shares[row]);
      for (let c = 0; c < 3; c++) planes[c][squares[row]] = colours[3 * row + c];
    }
    blurWithin(planes, weights, size, sigma);
    for (const row of rows) {
      for (let c = 0; c < 3; c++) smooth[3 * row + c] = planes[c][squares[row]];
    }
  }
  return slots.map((_, row): Lab => [smooth[3 * row], smooth[3 * row + 1], smooth[3 * row + 2]]);
}

/** The smooth colours of the slots, as washes can have them. */
export function smoothColours(
  slotMap: Uint8Array,
  squares: ColourSquares,
  size: PixelSize,
  step: number,
  pxPerMm: number,
  room = new Room(),
): LabPlanes {
  const bytes = room.bytes(4 * size.width * size.height);
  const rgba = new Uint8ClampedArray(bytes.buffer, bytes.byteOffset, bytes.length);
  paintSquares(
    slotMap,
    size,
    scaledGrid(squares, 1 / step),
    tableOf(smoothRows(squares, pxPerMm)),
    null,
    rgba,
  );
  const raster = emptyRaster(size.width, size.height, room);
  const { red, green, blue } = raster;
  for (let i = 0, at = 0; i < red.length; i++, at += 4) {
    red[i] = toLinear[rgba[at]];
    green[i] = toLinear[rgba[at + 1]];
    blue[i] = toLinear[rgba[at + 2]];
  }
  return labInPlace(raster);
}

/** A picture as it is compared: L* on the sheet, a*, b*, C* of every pixel. */
interface Compared extends Pick<LabPlanes, 'a' | 'b'> {
  readonly tones: Float64Array;
  readonly chroma: Float64Array;
}

function toCompare({ lightness, a, b }: LabPlanes, range: ToneRange, room: Room): Compared {
  const tones = room.doubles(lightness.length);
  const chroma = room.doubles(lightness.length);
  for (let i = 0; i < tones.length; i++) {
    tones[i] = onTheSheet(range, lightness[i]);
    chroma[i] = Math.sqrt(a[i] * a[i] + b[i] * b[i]);
  }
  return { tones, a, b, chroma };
}

/** How much a pixel stands off a smooth colour that it is to be darker than. */
function needOf(photo: Compared, i: number, smooth: Compared, j: number): number {
  const darker = smooth.tones[j] - photo.tones[i];
  const chroma = photo.chroma[i];
  if (chroma < smooth.chroma[j]) return darker;
  const da = photo.a[i] - smooth.a[j];
  const db = photo.b[i] - smooth.b[j];
  return darker + (colourShare * Math.sqrt(da * da + db * db)) / (1 + colourFall * chroma);
}

interface MissingSettings {
  readonly cellsPerMm: number;
  /** See `interestIn`. */
  readonly nearness: (x: number, y: number) => number;
  readonly range: ToneRange;
  /** Whether a light may be set back at a place; on paper none is. */
  readonly canBeLight: (i: number) => boolean;
  /** Holds the answer, and what is large meanwhile. */
  readonly room?: Room;
}

/** What stands off the smooth colours of its own slot and of those it borders on: a rim between two is no detail. */
export function findMissing(
  photo: LabPlanes,
  smooth: LabPlanes,
  size: PixelSize,
  { cellsPerMm, nearness, range, canBeLight, room = new Room() }: MissingSettings,
): Missing {
  const rimPx = Math.max(1, Math.round(rimMm * cellsPerMm));
  const { width, height } = size;
  const own = toCompare(photo, range, room);
  const washed = toCompare(smooth, range, room);
  const kinds = room.bytes(photo.a.length).fill(0);
  const times = room.floats(photo.a.length).fill(0);
  const { tones } = washed;
  for (let y = 0, i = 0; y < height; y++) {
    const up = Math.min(rimPx, y) * width;
    const down = Math.min(rimPx, height - 1 - y) * width;
    for (let x = 0; x < width; x++, i++) {
      // Most places are as they are to be: nothing is asked for there, whatever lies beside them.
      const tone = own.tones[i];
      const mayBeLight = tone - tones[i] >= sparkleFrom;
      let need = needOf(own, i, washed, i);
      if (!mayBeLight && need < missingFrom.near) continue;
      const left = i - Math.min(rimPx, x);
      const right = i + Math.min(rimPx, width - 1 - x);
      const above = i - up;
      const below = i + down;
      const beside = Math.max(tones[left], tones[right], tones[above], tones[below]);
      const over = tone - Math.max(tones[i], beside);
      if (over >= sparkleFrom && canBeLight(i)) {
        kinds[i] = light;
        times[i] = over / sparkleFrom;
        continue;
      }
      const darkest = Math.min(tones[i], tones[left], tones[right], tones[above], tones[below]);
      if (tone - darkest > lighterAllowed) continue;
      need = Math.min(
        need,
        needOf(own, i, washed, left),
        needOf(own, i, washed, right),
        needOf(own, i, washed, above),
        needOf(own, i, washed, below),
      );
      if (need < missingFrom.near) continue; // nowhere is less asked for
      const near = nearness((x + 0.5) / width, (y + 0.5) / height);
      const from = missingFrom.far + near * (missingFrom.near - missingFrom.far);
      if (need < from) continue;
      kinds[i] = dark;
      times[i] = need / from;
    }
  }
  return { size, kinds, times, photo };
}
