import type { Step, WashPlan } from '../../../app/core/plan/plan.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';
import { type Drawing, drawSheet } from '../../support/compare/drawn-sheet.ts';
import { exposed } from '../../support/compare/exposed.ts';
import type { Scene } from '../../support/compare/scene.ts';

interface Painted {
  readonly reading: Reading;
  readonly slotMap: Uint8Array;
  readonly plan: WashPlan;
}

/** A JPEG of the sheet after a step, drawn and exposed by the tests' own means, enlarged to a long side of so many px. */
export async function sheetPhoto(
  { reading, slotMap, plan }: Painted,
  step: Step,
  scene: Scene,
  drawing: Drawing = {},
  longSidePx = scene.longSidePx,
): Promise<Blob> {
  const sheet = drawSheet(reading, slotMap, plan, step, drawing);
  const { rgb, width, height } = exposed(sheet, scene);
  const rgba = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let i = 0; i < width * height; i++)
    for (let c = 0; c < 3; c++) rgba[4 * i + c] = rgb[3 * i + c] as number;
  const taken = await createImageBitmap(new ImageData(rgba, width, height));
  const scale = longSidePx / Math.max(width, height);
  const canvas = new OffscreenCanvas(Math.round(width * scale), Math.round(height * scale));
  canvas.getContext('2d')?.drawImage(taken, 0, 0, canvas.width, canvas.height);
  taken.close();
  return canvas.convertToBlob({ type: 'image/jpeg', quality: scene.quality / 100 });
}
