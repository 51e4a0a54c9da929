import { type Lab, tableOf } from '../core/colour/lab.ts';
import type { WashPlace } from '../core/plan/runs/wash-places.ts';
import { paintSlots } from '../core/raster/paint-slots.ts';
import type { PixelSize } from '../core/raster/size.ts';
import type { Layer } from './layers.ts';

/** The shapes of one wash: a number for every pixel, and whether a number is painted. */
interface ShapesMap {
  readonly map: Uint8Array;
  readonly isPainted: readonly boolean[];
}

/** Width of the outlines as a share of the long side: seen on a phone, and no shape is covered. */
const lineShare = 1 / 400;

/** What the wash does not cover. */
const unpainted: Lab = [90, 0, 0];

/** Half the lightness and colour taken out, so that the outlines are what is seen. */
const paled = ([lightness, a, b]: Lab): Lab => [50 + lightness / 2, a / 2, b / 2];

/** Blackens a square of `side` px about every place where a painted shape ends. */
function outline(
  { map, isPainted }: ShapesMap,
  { width, height }: PixelSize,
  side: number,
  rgba: Uint8ClampedArray,
): void {
  const words = new Uint32Array(rgba.buffer, rgba.byteOffset, map.length);
  const black = new Uint32Array(new Uint8ClampedArray([0, 0, 0, 255]).buffer)[0] as number;
  const reach = side >> 1;
  const ends = (i: number, next: number): boolean => {
    const [own, other] = [map[i] as number, map[next] as number];
    return own !== other && (isPainted[own] === true || isPainted[other] === true);
  };
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const right = x + 1 < width && ends(i, i + 1);
      const below = y + 1 < height && ends(i, i + width);
      if (!right && !below) continue;
      const from = Math.max(0, x - reach);
      const to = Math.min(width, x + reach + 1);
      for (let v = Math.max(0, y - reach); v <= Math.min(height - 1, y + reach); v++) {
        words.fill(black, v * width + from, v * width + to);
      }
    }
  }
}

/** The shapes she paints in one wash, outlined over the picture paled; the rest plain. */
export const shapesLayer =
  (shapes: ShapesMap, slotMap: Uint8Array, colours: readonly Lab[]): Layer =>
  (context) => {
    const { map, isPainted } = shapes;
    const { width, height } = context.canvas;
    const image = context.createImageData(width, height);
    const shown = slotMap.slice();
    const rest = colours.length; // one slot more than there are
    for (let i = 0; i < shown.length; i++) if (!isPainted[map[i] as number]) shown[i] = rest;
    paintSlots(shown, tableOf([...colours.map(paled), unpainted]), image.data);
    const side = Math.max(1, Math.round(lineShare * Math.max(width, height)));
    outline(shapes, { width, height }, side, image.data);
    context.putImageData(image, 0, 0);
  };

/** Height of a tag as a share of the long side: to be read on a phone. */
const tagShare = 1 / 19;

/** What stands on a tag: '1 A', 'B', 'A thin'. */
const tagWords = ({ turn, puddle, amount }: Omit<WashPlace, 'place'>): string =>
  [turn, puddle, amount].filter((word) => word !== null).join(' ');

/**
 * A picture with tags of paper on it: large ones on shapes, for their turn and their puddle; slighter ones inside them,
 * for a second puddle and for where paint is strong or thin. `places` is asked when it is painted.
 */
export const pointedLayer =
  (under: Layer, places: () => readonly WashPlace[]): Layer =>
  (context) => {
    under(context);
    const { width, height } = context.canvas;
    const whole = Math.max(14, Math.max(width, height) * tagShare);
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    for (const { place, ...tag } of places()) {
      const inside = tag.turn === null;
      const high = inside ? 0.8 * whole : whole;
      const words = tagWords(tag);
      context.font = `${inside ? 500 : 600} ${Math.round(high * 0.68)}px system-ui, sans-serif`;
      context.lineWidth = high / (inside ? 24 : 14);
      const wide = context.measureText(words).width + high / 2;
      // A tag at the rim is moved in so that all of it is seen.
      const x = Math.min(width - wide / 2, Math.max(wide / 2, place[0] * width));
      const y = Math.min(height - high / 2, Math.max(high / 2, place[1] * height));
      context.fillStyle = 'white';
      context.fillRect(x - wide / 2, y - high / 2, wide, high);
      context.strokeStyle = 'black';
      context.strokeRect(x - wide / 2, y - high / 2, wide, high);
      context.fillStyle = 'black';
      context.fillText(words, x, y + high / 24);
    }
  };
