import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { softBlend } from '../../../workers/kernels/edges/soft-blend.ts';
import { softEdges } from '../../../workers/kernels/edges/soft-edges.ts';
import { tableOf } from '../../drawing/lab-to-rgb.ts';
import { outlineSvg } from '../../drawing/outline-svg.ts';
import { paintSlots } from '../../drawing/paint-slots.ts';
import { paintSoft } from '../../drawing/paint-soft.ts';
import { outlineOf } from '../../model/outline.ts';
import type { Reading } from '../../model/reading.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import { CommandError } from './command-error.ts';
import { edgeDrawing } from './edge-drawing.ts';
import { massPicture } from './mass-picture.ts';

/** All RGBA bytes of the raster's size, opaque. */
export interface PlanPictures {
  readonly reference: Uint8ClampedArray;
  readonly grey: Uint8ClampedArray;
  /** Band and slot of every pixel. */
  readonly bandMap: Uint8Array;
  readonly slotMap: Uint8Array;
}

export const stepPicture = (n: number): string => `step-${n}.png`;

/** A colour table by number, red, green, blue: grey 255 (k - band) / (k - 1). */
function bandTable(k: number): Uint8ClampedArray {
  const table = new Uint8ClampedArray((k + 1) * 3);
  for (let band = 1; band <= k; band++) {
    const grey = k === 1 ? 255 : Math.round((255 * (k - band)) / (k - 1));
    table.fill(grey, band * 3, band * 3 + 3);
  }
  return table;
}

/** Writes reference, grey, bands, families, edges, masses, the drawing and one picture a step into `dir`, made if need be. */
export async function writePictures(
  dir: string,
  reading: Reading,
  plan: WashPlan,
  pictures: PlanPictures,
): Promise<void> {
  try {
    await mkdir(dir, { recursive: true });
  } catch {
    throw new CommandError(`--out: the folder ${dir} can't be made`);
  }
  const { width, height } = reading.raster;
  const write = (name: string, rgba: Uint8ClampedArray): Promise<unknown> =>
    sharp(rgba, { raw: { width, height, channels: 4 } })
      .removeAlpha()
      .png({ compressionLevel: 6 })
      .toFile(join(dir, name));
  const painted = (map: Uint8Array, table: Uint8ClampedArray): Uint8ClampedArray => {
    const rgba = new Uint8ClampedArray(width * height * 4);
    paintSlots(map, table, rgba);
    return rgba;
  };
  const families = new Uint8ClampedArray(plan.slots.flatMap((slot) => [slot.family, 0, 0]));
  await write('reference.png', pictures.reference);
  await write('grey.png', pictures.grey);
  await write('bands.png', painted(pictures.bandMap, bandTable(reading.bands.length)));
  await write('families.png', painted(pictures.slotMap, families));
  const drawing = Buffer.from(edgeDrawing(reading.edges ?? [], width, height));
  await sharp(pictures.reference, { raw: { width, height, channels: 4 } })
    .composite([{ input: drawing }])
    .removeAlpha()
    .png({ compressionLevel: 6 })
    .toFile(join(dir, 'edges.png'));
  await write('masses.png', massPicture(reading, pictures.slotMap));
  const outline = outlineOf(reading, pictures.slotMap);
  const all = { grid: true, soft: true, inner: true };
  await writeFile(join(dir, 'outline.svg'), outlineSvg(outline, all));
  const { raster, edges = [] } = reading;
  const blend = softBlend(pictures.slotMap, raster, softEdges(edges, raster));
  for (const step of plan.steps) {
    const rgba = new Uint8ClampedArray(width * height * 4);
    paintSoft(pictures.slotMap, blend, tableOf(step.after), rgba);
    await write(stepPicture(step.n), rgba);
  }
}
