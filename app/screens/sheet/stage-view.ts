import { boxOf, type CropBox } from '../../model/crop-box.ts';
import { roomOf } from '../../model/cut-limits.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import type { Crop } from '../../model/reference.ts';

/** How the turned photo lies on the stage: everything in px of the screen. */
export interface StageView {
  /** Screen px per photo px. */
  readonly scale: number;
  readonly centre: readonly [x: number, y: number];
  /** The cut: its upper left corner and its sides. */
  readonly frame: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
}

/** Free space round the photo, px, so that a cut at its very edge can be seen and taken hold of. */
const margin = 14;

/** The whole turned photo, as large as the stage allows, and the cut upright over it. */
export function stageView(photo: PixelSize, crop: Crop, stage: PixelSize): StageView {
  const room = roomOf(photo, crop.turn);
  const scale = Math.max(
    1e-6,
    Math.min((stage.width - 2 * margin) / room.width, (stage.height - 2 * margin) / room.height),
  );
  const centre = [stage.width / 2, stage.height / 2] as const;
  const box: CropBox = boxOf(photo, crop);
  const angle = (crop.turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [x, y] = [box.x - photo.width / 2, box.y - photo.height / 2];
  const [width, height] = [box.width * scale, box.height * scale];
  return {
    scale,
    centre,
    frame: {
      x: centre[0] + (cos * x - sin * y) * scale - width / 2,
      y: centre[1] + (sin * x + cos * y) * scale - height / 2,
      width,
      height,
    },
  };
}
