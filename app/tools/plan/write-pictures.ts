import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { drawExpectedSheet } from '../../core/compare/expected-sheet.ts';
import { runToEnd } from '../../core/numeric/run-to-end.ts';
import { outlineOf } from '../../core/outline/outline.ts';
import { outlineSvg } from '../../core/outline/outline-svg.ts';
import type { WashPlan } from '../../core/plan/plan.ts';
import { paintSlots } from '../../core/raster/paint-slots.ts';
import { computePxPerMm } from '../../core/raster/size.ts';
import type { Edge } from '../../core/reading/edges/edge.ts';
import { softBlend, softEdges } from '../../core/reading/edges/soft-blend.ts';
import { type MassWash, massSizes } from '../../core/reading/masses.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { washMasses } from '../../core/reading/shapes/wash-masses.ts';
import { CommandError } from './plan-options.ts';

/** Half the length of the strokes that end a lost stretch, px. */
const tickPx = 6;

const px = (value: number): string => value.toFixed(1);

/** A short stroke across the end of a path; `from` is the point before it. */
function tick([x, y]: readonly [number, number], [fromX, fromY]: readonly [number, number]) {
  const length = Math.hypot(x - fromX, y - fromY) || 1;
  const [dx, dy] = [(-(y - fromY) / length) * tickPx, ((x - fromX) / length) * tickPx];
  return `M${px(x - dx)} ${px(y - dy)}L${px(x + dx)} ${px(y + dy)}`;
}

/** Line styles by kind: a full line, dots, a thin line; of lost edges only the ends are drawn. */
const styles = {
  hard: { width: 3, dashes: '' },
  soft: { width: 4, dashes: ' stroke-dasharray="0 9"' },
  found: { width: 1.2, dashes: '' },
  lost: { width: 2, dashes: '' },
} as const;

/** SVG of edges told apart by line style alone, black with a white casing, for a picture of that size. */
function drawEdges(edges: readonly Edge[], width: number, height: number): string {
  const layers = (Object.keys(styles) as Edge['kind'][]).map((kind) => {
    const paths = edges
      .filter((edge) => edge.kind === kind && edge.path.length > 1)
      .map(({ path }) => {
        const points = path.map(([x, y]) => [x * width, y * height] as const);
        const [first, second] = points as [(typeof points)[0], (typeof points)[0]];
        const [beforeLast, last] = points.slice(-2) as [typeof first, typeof first];
        if (kind === 'lost') return tick(first, second) + tick(last, beforeLast);
        return `M${points.map(([x, y]) => `${px(x)} ${px(y)}`).join('L')}`;
      })
      .join('');
    return { ...styles[kind], paths };
  });
  const drawn = (colour: string, wider: number): string =>
    layers
      .map(
        ({ width: stroke, dashes, paths }) =>
          `<path d="${paths}" stroke="${colour}" stroke-width="${stroke + wider}"${dashes}/>`,
      )
      .join('');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">` +
    '<g fill="none" stroke-linecap="round" stroke-linejoin="round">' +
    `${drawn('#fff', 2)}${drawn('#000', 0)}</g></svg>`
  );
}

/** Outlines by wash, px: the big shapes of the first wash thick, the darks fine. */
const outlines: readonly (readonly [MassWash, number])[] = [
  ['darks', 1],
  ['second', 3],
  ['firstWash', 5],
];

function washMap(reading: Reading, slotMap: Uint8Array, wash: MassWash): Uint8Array {
  const { raster, sheet, slots } = reading;
  const pxPerMm = computePxPerMm(raster, sheet);
  const pieces = washMasses(slotMap, slots, raster, pxPerMm, wash, massSizes);
  return runToEnd(pieces).map;
}

/** Blackens a square of `side` px about every place where a map changes. */
function outline(map: Uint8Array, rgba: Uint8ClampedArray, side: number, size: Reading['raster']) {
  const { width, height } = size;
  const reach = side >> 1;
  const blacken = (x: number, y: number): void => {
    for (let v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++) {
      const row = v * width;
      const from = 4 * (row + Math.max(0, x - reach));
      const to = 4 * (row + Math.min(width - 1, x + reach));
      for (let at = from; at <= to; at += 4) rgba.fill(0, at, at + 3);
    }
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const right = x + 1 < width && map[i + 1] !== map[i];
      const below = y + 1 < height && map[i + width] !== map[i];
      if (right || below) blacken(x, y);
    }
  }
}

/** RGBA of the shapes of every wash: outlines over the slots' planned values, these paled by half. */
function drawMasses(reading: Reading, slotMap: Uint8Array): Uint8ClampedArray {
  const greys = new Uint8ClampedArray(
    reading.slots.flatMap(({ target }) => new Array<number>(3).fill(127 + 1.28 * target[0])),
  );
  const rgba = new Uint8ClampedArray(slotMap.length * 4);
  paintSlots(slotMap, greys, rgba);
  for (const [wash, side] of outlines) {
    outline(washMap(reading, slotMap, wash), rgba, side, reading.raster);
  }
  return rgba;
}

/** All RGBA bytes of the raster's size, opaque. */
interface PlanPictures {
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

/** A folder that takes no files, or a full disk. Errors: `CommandError`, one line. */
async function tryWriting(dir: string, name: string, work: () => Promise<unknown>): Promise<void> {
  try {
    await work();
  } catch {
    throw new CommandError(`--out: ${join(dir, name)} can't be written`);
  }
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
  const write = (name: string, rgba: Uint8ClampedArray, over?: Buffer): Promise<void> =>
    tryWriting(dir, name, () =>
      sharp(rgba, { raw: { width, height, channels: 4 } })
        .composite(over ? [{ input: over }] : [])
        .removeAlpha()
        .png({ compressionLevel: 6 })
        .toFile(join(dir, name)),
    );
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
  const drawing = Buffer.from(drawEdges(reading.edges ?? [], width, height));
  await write('edges.png', pictures.reference, drawing);
  await write('masses.png', drawMasses(reading, pictures.slotMap));
  const outline = outlineOf(reading, pictures.slotMap);
  const all = { grid: true, soft: true, inner: true };
  await tryWriting(dir, 'outline.svg', () =>
    writeFile(join(dir, 'outline.svg'), outlineSvg(outline, all)),
  );
  const { raster, edges = [] } = reading;
  const blend = softBlend(pictures.slotMap, raster, softEdges(edges, raster));
  for (const step of plan.steps) {
    const rgba = drawExpectedSheet(reading, pictures.slotMap, blend, raster, step);
    await write(stepPicture(step.n), rgba);
  }
}
