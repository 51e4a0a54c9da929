import { type Lab, tableOf } from '../core/colour/lab.ts';
import { makeGrey } from '../core/colour/srgb.ts';
import { eachMarkPixel, type MarkGrid, paintMarks } from '../core/raster/paint-marks.ts';
import { paintBySlot, paintSlots, paintSoft, type SoftBlend } from '../core/raster/paint-slots.ts';
import { paintSquares, type SquareGrid } from '../core/raster/paint-squares.ts';

/** What a layer is painted with, on a canvas of the page or beside it. */
export type LayerContext = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

/** Paints one whole layer of a picture onto a canvas of the raster's size. */
export type Layer = (context: LayerContext) => void;

export const bitmapLayer =
  (bitmap: ImageBitmap): Layer =>
  (context) =>
    context.drawImage(bitmap, 0, 0, context.canvas.width, context.canvas.height);

/** Every slot in a flat colour. */
export const slotLayer =
  (slotMap: Uint8Array, colours: readonly Lab[]): Layer =>
  (context) => {
    const { width, height } = context.canvas;
    const image = context.createImageData(width, height);
    paintSlots(slotMap, tableOf(colours), image.data);
    context.putImageData(image, 0, 0);
  };

/** What a sheet is drawn from. */
export interface SheetMap {
  readonly slotMap: Uint8Array;
  /** Missing: slots are flat. */
  readonly squares?: SquareGrid;
  /** Small shapes that marks are set on; missing: none are drawn. */
  readonly details?: MarkGrid;
  /** How slots run into each other at soft edges; all crisp without. */
  readonly soft: SoftBlend | null;
}

/** Colours of a sheet: of every slot, and of every row of the squares where it runs. */
export interface SheetLook {
  readonly after: readonly Lab[];
  readonly look?: Uint8ClampedArray;
  readonly marks?: readonly { readonly shape: number; readonly lab: Lab }[];
}

/** The sheet in colour, or as a greyscale of it would show. */
export const sheetLayer =
  (
    { slotMap, squares, details, soft }: SheetMap,
    { after, look, marks = [] }: SheetLook,
    grey = false,
  ): Layer =>
  (context) => {
    const { width, height } = context.canvas;
    const image = context.createImageData(width, height);
    const { data } = image;
    const runs = squares && look?.length === 3 * squares.slots.length;
    if (runs) paintSquares(slotMap, { width, height }, squares, look, soft, data);
    else if (soft) paintSoft(slotMap, soft, tableOf(after), data);
    else paintSlots(slotMap, tableOf(after), data);
    if (details) paintMarks(details, marks, { width, height }, data);
    if (grey) makeGrey(data);
    context.putImageData(image, 0, 0);
  };

/** How little of the picture shows where it is dimmed: alpha of the grey over it. */
const veiled = 222;

/** L* 56 as an sRGB code: the wall round a picture, into which what is dimmed falls back. */
export const wallGrey = 134;

/** A picture with all but some slots dimmed to a flat grey: shows where to paint. */
export const whereLayer =
  (under: Layer, slotMap: Uint8Array, shown: ReadonlySet<number>, grey: number): Layer =>
  (context) => {
    under(context);
    const { width, height } = context.canvas;
    const veil = new OffscreenCanvas(width, height);
    const on = veil.getContext('2d');
    if (!on) return;
    const image = on.createImageData(width, height);
    const colours = new Uint8ClampedArray(256 * 4).fill(grey);
    for (let slot = 0; slot < 256; slot++) colours[slot * 4 + 3] = shown.has(slot) ? 0 : veiled;
    paintBySlot(slotMap, colours, image.data);
    on.putImageData(image, 0, 0);
    context.drawImage(veil, 0, 0);
  };

/** How far round a mark the picture stays in sight, as a share of its long side. */
const shownRound = 1 / 160;

/** A picture dimmed to a flat grey but for some small shapes and what lies close round them. */
export const whereMarksLayer =
  (under: Layer, grid: MarkGrid, shapes: readonly number[], grey: number): Layer =>
  (context) => {
    under(context);
    const { width, height } = context.canvas;
    const veil = new OffscreenCanvas(width, height);
    const on = veil.getContext('2d');
    if (!on) return;
    on.fillStyle = `rgb(${grey} ${grey} ${grey} / ${veiled / 255})`;
    on.fillRect(0, 0, width, height);
    on.globalCompositeOperation = 'destination-out';
    const reach = Math.max(2, Math.round(shownRound * Math.max(width, height)));
    for (const shape of shapes) {
      eachMarkPixel(grid, shape, { width, height }, (pixel) => {
        const [x, y] = [pixel % width, Math.floor(pixel / width)];
        on.fillRect(x - reach, y - reach, 2 * reach + 1, 2 * reach + 1);
      });
    }
    context.drawImage(veil, 0, 0);
  };

/** The same colours with their hue taken out: what a greyscale of the sheet would show. */
export const withoutHue = (colours: readonly Lab[]): Lab[] => colours.map(([l]) => [l, 0, 0]);

/** A picture paled towards white by that share, 0..1: lines over it stand out. */
export const paledLayer =
  (under: Layer, share: number): Layer =>
  (context) => {
    under(context);
    context.globalAlpha = share;
    context.fillStyle = 'white';
    context.fillRect(0, 0, context.canvas.width, context.canvas.height);
    context.globalAlpha = 1;
  };
