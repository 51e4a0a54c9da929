import type { PixelSize } from '../../../app/model/pixel-size.ts';
import { lightnessOfLinear } from '../pixels/lightness.ts';
import type { LinearRaster } from '../pixels/linear-raster.ts';
import { areaBox, type Box, cutOut } from './area-box.ts';
import { edgeDistance } from './edge-distance.ts';
import { onSheetPx } from './on-sheet-px.ts';
import { luminanceOf, setLuminance } from './set-luminance.ts';
import { smoothStep } from './smooth-step.ts';

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
      const away = (distance[cell] as number) / soft;
      const share = smoothStep(inside[cell] === 1 ? (1 + away) / 2 : (1 - away) / 2);
      if (share === 0) continue;
      const was = lightnessOfLinear(red[i] as number, green[i] as number, blue[i] as number);
      const lightness = Math.max(0, Math.min(100, was + share * by));
      if (lightness !== was) setLuminance(raster, i, luminanceOf(lightness));
    }
  }
}

/**
 * Moves the lightness of an area (1 in `area`) of the raster by `by` L*, in place; along its outline
 * the change sets in gradually, half of it outside. Colour is kept as far as the range allows.
 */
export function* shiftLightness(
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
  const distance = edgeDistance(inside, box, soft);
  yield;
  shiftBox(raster, box, { inside, distance, soft, by });
}
