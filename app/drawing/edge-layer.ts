import type { Edge, EdgeKind } from '../model/edge.ts';
import type { Layer } from './layers.ts';

/** How an edge is drawn: kinds are told apart by line alone. Lengths are shares of the long side. */
export interface EdgeLine {
  readonly width: number;
  /** Lengths of stroke and gap; empty for a full line. */
  readonly dash: readonly number[];
}

/** A full line, a thin full line, a row of dots, gaps with short ticks between. */
export const edgeLines: Readonly<Record<EdgeKind, EdgeLine>> = {
  hard: { width: 0.0034, dash: [] },
  found: { width: 0.0014, dash: [] },
  soft: { width: 0.0034, dash: [0.0001, 0.0075] },
  lost: { width: 0.0018, dash: [0.003, 0.014] },
};

function trace(context: CanvasRenderingContext2D, { path }: Pick<Edge, 'path'>): void {
  const { width, height } = context.canvas;
  path.forEach(([x, y], i) => {
    if (i === 0) context.moveTo(x * width, y * height);
    else context.lineTo(x * width, y * height);
  });
}

/** Edges over a picture, black with a white casing, so that they read on every ground. */
export const edgeLayer =
  (under: Layer, edges: readonly Edge[]): Layer =>
  (context) => {
    under(context);
    const longSide = Math.max(context.canvas.width, context.canvas.height);
    context.lineCap = 'round';
    context.lineJoin = 'round';
    for (const [colour, casing] of [
      ['white', 0.0022],
      ['black', 0],
    ] as const)
      for (const kind of ['lost', 'soft', 'found', 'hard'] as const) {
        const line = edgeLines[kind];
        context.strokeStyle = colour;
        context.lineWidth = (line.width + casing) * longSide;
        context.setLineDash(line.dash.map((share) => share * longSide));
        context.beginPath();
        for (const edge of edges) if (edge.kind === kind) trace(context, edge);
        context.stroke();
      }
    context.setLineDash([]);
  };
