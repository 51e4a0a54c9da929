import type { ComparedSheet } from '../../../workers/api.ts';
import { makeGrey } from '../../core/colour/srgb.ts';
import type { Advice } from '../../core/compare/comparison.ts';
import { measuredRgba } from '../../core/compare/measured-sheet.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import { bitmapLayer, type Layer, wallGrey } from '../../drawing/layers.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';

export type SheetPictures = NonNullable<ComparedSheet['pictures']>;

const rgbaLayer =
  (
    rgba: () => Uint8ClampedArray<ArrayBuffer>,
    { width, height }: PixelSize,
    grey: boolean,
  ): Layer =>
  (context) => {
    const data = rgba().slice();
    if (grey) makeGrey(data);
    context.putImageData(new ImageData(data, width, height), 0, 0);
  };

/** What an advice would change: its shapes, or the whole slot where it names none. */
function pixelsOf({ slotMap, shapes }: SheetPictures, advice: Advice): (pixel: number) => boolean {
  const own = new Set(advice.shapes);
  if (own.size === 0) return () => false;
  return (pixel) => own.has(shapes[pixel] ?? -1) && slotMap[pixel] === advice.slot;
}

/** All but the places of an advice dimmed to the wall's grey; an edge is a ring round its middle. */
export function whereLayer(pictures: SheetPictures, advice: Advice): Layer {
  const { width, height } = pictures.size;
  const holds = pixelsOf(pictures, advice);
  return (context) => {
    if (advice.shapes.length > 0) {
      const image = context.createImageData(width, height);
      for (let i = 0; i < width * height; i++)
        image.data.set([wallGrey, wallGrey, wallGrey, holds(i) ? 0 : 200], 4 * i);
      context.putImageData(image, 0, 0);
      return;
    }
    const [x, y] = advice.at;
    for (const [colour, wide] of [
      ['white', 8],
      ['black', 4],
    ] as const) {
      context.strokeStyle = colour;
      context.lineWidth = wide;
      context.beginPath();
      context.arc(x * width, y * height, Math.max(width, height) / 24, 0, 2 * Math.PI);
      context.stroke();
    }
  };
}

/** Every side in colour and in grey, and the places of an advice. */
export function comparedLayers(
  { reference, grey }: Pick<OpenedReading, 'reference' | 'grey'>,
  pictures: SheetPictures,
  advice: Advice | null,
): Record<string, Layer> {
  const { size, expected, measured } = pictures;
  const painting = lazily(() => measuredRgba(measured));
  const mended = lazily(() => {
    if (!advice) return measuredRgba(measured);
    const { predicted: to, measured: from } = advice;
    const by = [to[0] - from[0], to[1] - from[1], to[2] - from[2]] as const;
    return measuredRgba(measured, { by, holds: pixelsOf(pictures, advice) });
  });
  return {
    reference: bitmapLayer(reference),
    'reference-grey': bitmapLayer(grey),
    planned: rgbaLayer(() => expected, size, false),
    'planned-grey': rgbaLayer(() => expected, size, true),
    painting: rgbaLayer(painting, size, false),
    'painting-grey': rgbaLayer(painting, size, true),
    mended: rgbaLayer(mended, size, false),
    'mended-grey': rgbaLayer(mended, size, true),
  };
}

function lazily<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
