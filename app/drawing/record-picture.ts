import type { PixelSize } from '../core/raster/size.ts';
import type { Layer } from './layers.ts';
import { linesOf } from './plan-picture.ts';
import { paintedCanvas } from './png-file.ts';

interface RecordPicture {
  readonly title: string;
  /** When, how long. */
  readonly head: string;
  /** Of the picture of the reference, px; all pictures are shown in its shape. */
  readonly size: PixelSize;
  readonly pictures: readonly { readonly words: string; readonly draw: Layer | ImageBitmap }[];
  /** A line of text each. */
  readonly lines: readonly string[];
}

/** All lengths in px: three pictures beside one another, and words to be read on a phone (own). */
const widthPx = 1800;
const edgePx = 48;
const gapPx = 24;
const titlePx = 52;
const wordsPx = 30;
const lineHeight = 1.35;
const family = 'system-ui, "DejaVu Sans", sans-serif';
/** Round a photo of another shape than the sheet: middle grey. */
const surround = '#777777';

/** The record as one picture: what she worked from, the plan, the painting, and what she noted. Null without a canvas. */
export function drawRecordPicture(
  canvas: HTMLCanvasElement,
  { title, head, size, pictures, lines }: RecordPicture,
): HTMLCanvasElement | null {
  const context = canvas.getContext('2d');
  if (!context) return null;
  const room = widthPx - 2 * edgePx;
  const wide = (room - (pictures.length - 1) * gapPx) / Math.max(1, pictures.length);
  const high = Math.round((wide * size.height) / size.width);
  const line = wordsPx * lineHeight;
  const setType = (px: number, weight: number): void => {
    context.font = `${weight} ${px}px ${family}`;
    context.textBaseline = 'top';
    context.fillStyle = '#121212';
  };
  setType(wordsPx, 400);
  const words = lines.flatMap((each) =>
    linesOf(each, (text) => context.measureText(text).width, room),
  );
  canvas.width = widthPx;
  canvas.height = Math.ceil(
    2 * edgePx + titlePx * lineHeight + 3 * gapPx + 2 * line + high + words.length * line,
  );
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, canvas.width, canvas.height);

  let top = edgePx;
  setType(titlePx, 600);
  context.fillText(title, edgePx, top, room);
  top += titlePx * lineHeight;
  setType(wordsPx, 400);
  context.fillText(head, edgePx, top, room);
  top += line + gapPx;
  pictures.forEach(({ words: caption, draw }, i) => {
    const left = edgePx + i * (wide + gapPx);
    context.fillStyle = surround;
    context.fillRect(left, top, wide, high);
    const drawn =
      draw instanceof ImageBitmap ? draw : paintedCanvas(canvas.ownerDocument, draw, size);
    if (!drawn) return;
    const scale = Math.min(wide / drawn.width, high / drawn.height);
    const [w, h] = [drawn.width * scale, drawn.height * scale];
    context.drawImage(drawn, left + (wide - w) / 2, top + (high - h) / 2, w, h);
    setType(wordsPx, 400);
    context.fillText(caption, left, top + high + 8, wide);
  });
  top += high + line + 2 * gapPx;
  for (const text of words) {
    context.fillText(text, edgePx, top);
    top += line;
  }
  return canvas;
}
