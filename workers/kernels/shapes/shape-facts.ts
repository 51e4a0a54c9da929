import type { PixelSize } from '../../../app/model/pixel-size.ts';
import { shortSide } from '../../../app/model/short-side.ts';
import { labelShapes } from './label-shapes.ts';

/** Size and form of every connected shape of a map. */
export interface ShapeFacts {
  readonly kinds: Uint8Array;
  readonly areasPx: Int32Array;
  /** Outline in px, straightened: pixel sides times pi / 4, right on average over directions. */
  readonly outlinesPx: Float32Array;
}

/** Hands back control now and then. The picture's own border counts as outline. */
export function* shapeFacts(map: Uint8Array, size: PixelSize): Generator<void, ShapeFacts> {
  const { labels, kinds, areasPx } = yield* labelShapes(map, size);
  yield;
  const { width, height } = size;
  const outlinesPx = new Float32Array(kinds.length);
  const side = Math.PI / 4;
  for (let y = 0; y < height; y++) {
    for (let x = 0, i = y * width; x < width; x++, i++) {
      const label = labels[i] as number;
      let sides = 0;
      if (x === 0 || labels[i - 1] !== label) sides++;
      if (x === width - 1 || labels[i + 1] !== label) sides++;
      if (y === 0 || labels[i - width] !== label) sides++;
      if (y === height - 1 || labels[i + width] !== label) sides++;
      if (sides > 0) outlinesPx[label] = (outlinesPx[label] as number) + sides * side;
    }
  }
  return { kinds, areasPx, outlinesPx };
}

/** Share of the picture, 0..1, in shapes under that area (px2) or with a shorter side (px) than that. */
export function tooSmallShare(
  { areasPx, outlinesPx }: Pick<ShapeFacts, 'areasPx' | 'outlinesPx'>,
  areaPx: number,
  sidePx: number,
): number {
  let small = 0;
  let all = 0;
  for (let shape = 0; shape < areasPx.length; shape++) {
    const area = areasPx[shape] as number;
    all += area;
    if (area < areaPx || shortSide(area, outlinesPx[shape] as number) < sidePx) small += area;
  }
  return all > 0 ? small / all : 0;
}
