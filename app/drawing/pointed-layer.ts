import type { ShapePlace } from './largest-shapes.ts';
import type { Layer } from './layers.ts';

/** Radius of a mark as a share of the long side: to be read on a phone. */
const markShare = 1 / 42;

/** A picture with some shapes numbered: a black figure in a white disc. `shapes` is asked when it is painted. */
export const pointedLayer =
  (under: Layer, shapes: () => readonly ShapePlace[]): Layer =>
  (context) => {
    under(context);
    const { width, height } = context.canvas;
    const radius = Math.max(6, Math.max(width, height) * markShare);
    context.font = `600 ${Math.round(radius * 1.3)}px system-ui, sans-serif`;
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    context.lineWidth = radius / 8;
    for (const [i, { place }] of shapes().entries()) {
      // A mark at the rim is moved in so that all of it is seen.
      const x = Math.min(width - radius, Math.max(radius, place[0] * width));
      const y = Math.min(height - radius, Math.max(radius, place[1] * height));
      context.beginPath();
      context.arc(x, y, radius, 0, 2 * Math.PI);
      context.fillStyle = 'white';
      context.fill();
      context.strokeStyle = 'black';
      context.stroke();
      context.fillStyle = 'black';
      context.fillText(String(i + 1), x, y + radius / 12);
    }
  };
