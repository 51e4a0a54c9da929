import sharp from 'sharp';
import type { DrawnSheet } from './drawn-sheet.ts';
import { type Exposed, exposed } from './exposed.ts';
import type { Scene } from './scene.ts';

export interface Photographed extends Omit<Exposed, 'rgb'> {
  readonly rgba: Uint8ClampedArray;
  readonly jpeg: Buffer;
}

/** Photographs a sheet. */
export async function photographed(sheet: DrawnSheet, scene: Scene): Promise<Photographed> {
  const { rgb, width, height, corners } = exposed(sheet, scene);
  const jpeg = await sharp(rgb, { raw: { width, height, channels: 3 } })
    .jpeg({ quality: scene.quality })
    .toBuffer();
  const { data } = await sharp(jpeg).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  const rgba = new Uint8ClampedArray(data.buffer, data.byteOffset, data.length);
  return { rgba, width, height, corners, jpeg };
}
