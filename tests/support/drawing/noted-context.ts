import type { PixelSize } from '../../../app/core/raster/size.ts';

/** One thing drawn, with the state the context had then. */
export interface Drawn {
  readonly did: 'fill' | 'stroke' | 'fillRect' | 'strokeRect' | 'fillText' | 'drawImage';
  /** Places and lengths it was called with, px; of a path its points, x and y by turns. */
  readonly with: readonly number[];
  /** How many lines its path has, and how many of them are closed. */
  readonly lines: readonly [begun: number, closed: number];
  readonly text?: string;
  readonly image?: unknown;
  readonly fillStyle: string;
  readonly strokeStyle: string;
  readonly lineWidth: number;
  readonly dash: readonly number[];
  readonly font: string;
  readonly alpha: number;
  readonly composite: string;
  /** 'x y' of what is set once: caps and joins of lines, where type hangs. */
  readonly set: string;
}

/** Width of type where nothing can be measured: half its height a letter, px. */
const typeWidth = (text: string, font: string): number =>
  (text.length * Number(/([\d.]+)px/.exec(font)?.[1] ?? 10)) / 2;

/**
 * A canvas context for tests without a browser: it draws nothing, but notes what is drawn and with what. Pictures put
 * onto it lie in `pixels`.
 */
export class NotedContext {
  readonly drawn: Drawn[] = [];
  readonly canvas: PixelSize & { ownerDocument?: unknown };
  pixels: Uint8ClampedArray | null = null;
  /** Where they were put. */
  put: readonly number[] = [];
  scales: number[] = [];
  fillStyle = '';
  strokeStyle = '';
  lineWidth = 1;
  font = '10px sans-serif';
  globalAlpha = 1;
  globalCompositeOperation = 'source-over';
  lineCap = 'butt';
  lineJoin = 'miter';
  textAlign = 'start';
  textBaseline = 'alphabetic';
  #dash: readonly number[] = [];
  #path: number[] = [];
  #begun = 0;
  #closed = 0;

  constructor(canvas: PixelSize) {
    this.canvas = canvas;
  }

  /** As the browser's context, for what is under test. */
  get context(): CanvasRenderingContext2D {
    return this as unknown as CanvasRenderingContext2D;
  }

  #note(did: Drawn['did'], numbers: readonly number[], more: Partial<Drawn> = {}): void {
    const { fillStyle, strokeStyle, lineWidth, font, lineCap, lineJoin } = this;
    const set = [lineCap, lineJoin, this.textAlign, this.textBaseline].join(' ');
    const [alpha, composite] = [this.globalAlpha, this.globalCompositeOperation];
    this.drawn.push({
      ...{ did, with: numbers, fillStyle, strokeStyle, lineWidth, dash: this.#dash, font },
      ...{ alpha, composite, set, lines: [this.#begun, this.#closed], ...more },
    });
  }

  beginPath = (): void => {
    this.#path = [];
    [this.#begun, this.#closed] = [0, 0];
  };
  moveTo = (x: number, y: number): void => {
    this.#path.push(x, y);
    this.#begun++;
  };
  lineTo = (x: number, y: number): void => {
    this.#path.push(x, y);
  };
  closePath = (): void => {
    this.#closed++;
  };
  setLineDash = (dash: readonly number[]): void => {
    this.#dash = dash;
  };
  scale = (x: number, y: number): void => {
    this.scales.push(x, y);
  };
  clearRect = (): void => {};
  fill = (): void => this.#note('fill', this.#path);
  stroke = (): void => this.#note('stroke', this.#path);
  fillRect = (...places: number[]): void => this.#note('fillRect', places);
  strokeRect = (...places: number[]): void => this.#note('strokeRect', places);
  fillText = (text: string, ...places: number[]): void => this.#note('fillText', places, { text });
  drawImage = (image: unknown, ...places: number[]): void =>
    this.#note('drawImage', places, { image });
  measureText = (text: string): { width: number } => ({ width: typeWidth(text, this.font) });
  createImageData = (width: number, height: number) => ({
    ...{ width, height, data: new Uint8ClampedArray(4 * width * height) },
  });
  putImageData = ({ data }: { data: Uint8ClampedArray }, ...place: number[]): void => {
    this.pixels = data;
    this.put = place;
  };
}

/** A canvas whose context notes what is drawn; canvases made beside it do so too and stand in `made`. */
export function notedCanvas(size: PixelSize = { width: 0, height: 0 }) {
  const made: NotedContext[] = [];
  const canvasOf = (own: PixelSize): HTMLCanvasElement => {
    const canvas = { ...own, getContext: () => context, ownerDocument };
    const context = new NotedContext(canvas);
    made.push(context);
    return canvas as unknown as HTMLCanvasElement;
  };
  const ownerDocument = { createElement: () => canvasOf({ width: 300, height: 150 }) };
  const canvas = canvasOf(size);
  return { canvas, noted: made[0] as NotedContext, made };
}
