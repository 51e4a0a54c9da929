import type { PatchFrame } from '../../../app/model/patch-frame.ts';
import { defaultPaperLab } from '../optics/default-paper.ts';

/** A pixel is painted where it differs from bare paper by more than this (Lab distance); own choice. */
const paintedDistance = 5;
/** Of its bounding box a patch fills at least so much: one turned by up to 15 degrees still does. */
const leastFilling = 0.5;
const smallestShare = 0.0012;
const largestShare = 0.3;
const longest = 7;

/** 1 where painted, row by row, after one pixel is taken off all round and put on again: lines go, patches stay. */
function paintedMask(lab: Float32Array, width: number, height: number): Uint8Array {
  const count = width * height;
  const mask = new Uint8Array(count);
  for (let p = 0; p < count; p++) {
    const off = Math.hypot(
      (lab[p] as number) - defaultPaperLab[0],
      (lab[count + p] as number) - defaultPaperLab[1],
      (lab[2 * count + p] as number) - defaultPaperLab[2],
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
  count: number;
}

/** Connected painted areas (four neighbours), as their bounding boxes. */
function connectedAreas(mask: Uint8Array, width: number, height: number): Area[] {
  const areas: Area[] = [];
  const open = new Int32Array(mask.length);
  for (let start = 0; start < mask.length; start++) {
    if (mask[start] !== 1) continue;
    const area = { left: width, top: height, right: 0, bottom: 0, count: 0 };
    let size = 0;
    open[size++] = start;
    mask[start] = 0;
    while (size > 0) {
      const p = open[--size] as number;
      const x = p % width;
      const y = Math.floor(p / width);
      area.left = Math.min(area.left, x);
      area.right = Math.max(area.right, x);
      area.top = Math.min(area.top, y);
      area.bottom = Math.max(area.bottom, y);
      area.count += 1;
      const beside = [
        x > 0 ? p - 1 : -1,
        x + 1 < width ? p + 1 : -1,
        y > 0 ? p - width : -1,
        y + 1 < height ? p + width : -1,
      ];
      for (const next of beside) {
        if (next < 0 || mask[next] !== 1) continue;
        mask[next] = 0;
        open[size++] = next;
      }
    }
    areas.push(area);
  }
  return areas;
}

/**
 * Frames round the painted patches of a small raster (Lab planes as `paperLab` gives them), in no order:
 * connected, mostly full, no line, not cut off by the photo's edge.
 */
export function paintedAreas(lab: Float32Array, width: number, height: number): PatchFrame[] {
  const all = width * height;
  return connectedAreas(paintedMask(lab, width, height), width, height)
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
      left: left / width,
      top: top / height,
      width: (right - left + 1) / width,
      height: (bottom - top + 1) / height,
    }));
}
