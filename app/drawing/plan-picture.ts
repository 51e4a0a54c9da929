import type { PixelSize } from '../core/raster/size.ts';

/** A step in the picture: how the sheet looks after it, and what is done. */
export interface PicturedStep {
  readonly title: string;
  readonly words: string;
  /** Draws the sheet, `size` large, from the upper left corner. */
  readonly draw: (context: CanvasRenderingContext2D) => void;
}

/** All lengths in px: wide enough to be read on a phone held upright, sheet above words (own). */
const widthPx = 1080;
const edgePx = 48;
const gapPx = 24;
const titlePx = 48;
const headPx = 36;
const wordsPx = 32;
const lineHeight = 1.35;
const family = 'system-ui, "DejaVu Sans", sans-serif';

/** No canvas may be larger, px. */
const mostPixels = 16_777_216;

/** Words in lines no wider than `most`; a word by itself may be. */
export function linesOf(words: string, widthOf: (text: string) => number, most: number): string[] {
  const lines: string[] = [];
  for (const word of words.split(/\s+/).filter(Boolean)) {
    const longer = lines.length > 0 ? `${lines[lines.length - 1]} ${word}` : word;
    if (lines.length > 0 && widthOf(longer) <= most) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

interface PlanInPictures {
  readonly title: string;
  readonly steps: readonly PicturedStep[];
  /** Of the sheet of a step, px. */
  readonly size: PixelSize;
  /** What to mind, at the foot. */
  readonly cautions: readonly string[];
}

/** The plan as one tall picture, step under step: for her phone, or to be handed on. Null where no canvas can be had. */
export function drawPlanPicture(
  canvas: HTMLCanvasElement,
  { title, steps, size, cautions }: PlanInPictures,
): HTMLCanvasElement | null {
  const context = canvas.getContext('2d');
  if (!context) return null;
  const room = widthPx - 2 * edgePx;
  const inLines = (words: string, px: number, weight: number): string[] => {
    context.font = `${weight} ${px}px ${family}`;
    return linesOf(words, (text) => context.measureText(text).width, room);
  };
  const texts = (step: PicturedStep) => [
    { lines: inLines(step.title, headPx, 600), px: headPx, weight: 600 },
    { lines: inLines(step.words, wordsPx, 400), px: wordsPx, weight: 400 },
  ];
  const head = { lines: inLines(title, titlePx, 600), px: titlePx, weight: 600 };
  const foot = cautions.map((caution) => ({
    lines: inLines(caution, wordsPx, 400),
    px: wordsPx,
    weight: 400,
  }));
  const laid = steps.map((step) => ({ step, texts: texts(step) }));
  const sheetHeight = Math.round((room * size.height) / size.width);
  const high = ({ lines, px }: { lines: string[]; px: number }): number =>
    lines.length * px * lineHeight;
  const heightPx = Math.ceil(
    laid.reduce(
      (sum, each) => sum + sheetHeight + 3 * gapPx + each.texts.reduce((s, t) => s + high(t), 0),
      2 * edgePx + high(head) + gapPx + foot.reduce((sum, text) => sum + high(text) + gapPx, 0),
    ),
  );
  const scale = Math.min(1, Math.sqrt(mostPixels / (widthPx * heightPx)));
  canvas.width = Math.floor(widthPx * scale);
  canvas.height = Math.floor(heightPx * scale);
  context.scale(scale, scale);
  context.fillStyle = '#ffffff';
  context.fillRect(0, 0, widthPx, heightPx);

  let top = edgePx;
  const write = ({ lines, px, weight }: { lines: string[]; px: number; weight: number }): void => {
    context.font = `${weight} ${px}px ${family}`;
    context.fillStyle = '#121212';
    context.textBaseline = 'top';
    for (const line of lines) {
      context.fillText(line, edgePx, top);
      top += px * lineHeight;
    }
  };
  write(head);
  top += gapPx;
  const sheet = canvas.ownerDocument.createElement('canvas');
  Object.assign(sheet, { width: size.width, height: size.height });
  const onSheet = sheet.getContext('2d');
  for (const { step, texts } of laid) {
    if (onSheet) step.draw(onSheet);
    context.drawImage(sheet, edgePx, top, room, sheetHeight);
    top += sheetHeight + gapPx;
    for (const text of texts) write(text);
    top += 2 * gapPx;
  }
  for (const text of foot) {
    write(text);
    top += gapPx;
  }
  return canvas;
}
