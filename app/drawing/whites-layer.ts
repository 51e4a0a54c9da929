import type { WhiteWay } from '../model/whites.ts';
import type { EdgeLine } from './edge-layer.ts';
import type { Layer, LayerContext } from './layers.ts';
import type { WhiteOutline } from './white-outlines.ts';

/** Ways are told apart by line alone: full, dashes, dots. Lengths are shares of the long side. */
export const whiteLines: Readonly<Record<WhiteWay, EdgeLine>> = {
  round: { width: 0.0034, dash: [] },
  mask: { width: 0.0034, dash: [0.0095, 0.0095] },
  last: { width: 0.004, dash: [0.0001, 0.0075] },
};

/** How much of the photo is covered where the paper stays white. */
const paper = 'rgb(255 255 255 / 0.9)';

function trace(context: LayerContext, { points }: WhiteOutline): void {
  for (let i = 0; i < points.length; i += 2) {
    const [x, y] = [points[i] as number, points[i + 1] as number];
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
  context.closePath();
}

/**
 * Whites over a picture: as bare paper, outlined in black with a white casing by the way each is kept.
 * `ways` by index of the white.
 */
export const whitesLayer =
  (under: Layer, outlines: readonly WhiteOutline[], ways: readonly WhiteWay[]): Layer =>
  (context) => {
    under(context);
    const longSide = Math.max(context.canvas.width, context.canvas.height);
    context.fillStyle = paper;
    context.beginPath();
    for (const outline of outlines) trace(context, outline);
    context.fill();
    context.lineCap = 'round';
    context.lineJoin = 'round';
    for (const [colour, casing] of [
      ['white', 0.002],
      ['black', 0],
    ] as const)
      for (const way of ['last', 'mask', 'round'] as const) {
        const line = whiteLines[way];
        context.strokeStyle = colour;
        context.lineWidth = (line.width + casing) * longSide;
        context.setLineDash(line.dash.map((share) => share * longSide));
        context.beginPath();
        for (const outline of outlines) if (ways[outline.white] === way) trace(context, outline);
        context.stroke();
      }
    context.setLineDash([]);
  };
