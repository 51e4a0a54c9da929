import type { Point } from '../core/colour/lab.ts';
import type { Outline } from '../core/outline/outline.ts';
import { outlinePaths } from '../core/outline/outline-svg.ts';
import type { WhiteOutline } from '../core/raster/trace-outlines.ts';
import { type Edge, type EdgeKind, kindOnSheet } from '../core/reading/edges/edge.ts';
import { alongEdge } from '../core/reading/edges/place-on-edge.ts';
import type { WhiteWay } from '../core/reading/whites/whites.ts';
import type { Layer, LayerContext } from './layers.ts';

/** How an edge is drawn: kinds are told apart by line alone. Lengths are shares of the long side. */
interface EdgeLine {
  readonly width: number;
  /** Lengths of stroke and gap; empty for a full line. */
  readonly dash: readonly number[];
}

/** A full line, a thin full line, a row of dots, gaps with short ticks between. */
export const edgeLines: Readonly<Record<EdgeKind, EdgeLine>> = {
  hard: { width: 0.0034, dash: [] },
  found: { width: 0.0014, dash: [] },
  soft: { width: 0.004, dash: [0.0001, 0.0125] },
  lost: { width: 0.0018, dash: [0.003, 0.014] },
};

function tracePath(context: LayerContext, { path }: Pick<Edge, 'path'>): void {
  const { width, height } = context.canvas;
  path.forEach(([x, y], i) => {
    if (i === 0) context.moveTo(x * width, y * height);
    else context.lineTo(x * width, y * height);
  });
}

/** The stroke across an edge she has decided, shares of the long side. */
export const decidedMark = { length: 0.018, width: 0.0028 } as const;

/** A short stroke across the middle of an edge. */
function traceMark(context: LayerContext, edge: Edge): void {
  const { width, height } = context.canvas;
  const [[x0, y0], [x, y], [x1, y1]] = ([0.47, 0.5, 0.53] as const).map((part) => {
    const [across, down] = alongEdge(edge, part, context.canvas);
    return [across * width, down * height] as const;
  }) as [Point, Point, Point];
  const long = Math.hypot(x1 - x0, y1 - y0);
  const half = (decidedMark.length * Math.max(width, height)) / 2;
  const [dx, dy] = long > 0 ? [(x1 - x0) / long, (y1 - y0) / long] : [1, 0];
  context.moveTo(x + dy * half, y - dx * half);
  context.lineTo(x - dy * half, y + dx * half);
}

/** A picture under many lines: its tones nearer to middle grey, so that lines and dots stand off it everywhere. */
export const paled =
  (under: Layer): Layer =>
  (context) => {
    under(context);
    context.fillStyle = 'rgb(170 170 170 / 0.45)';
    context.fillRect(0, 0, context.canvas.width, context.canvas.height);
  };

/**
 * Edges over a picture by what they are to be on the sheet, those she has decided with a stroke across;
 * black with a white casing, so that they read on every ground.
 */
export const edgeLayer =
  (under: Layer, edges: readonly Edge[]): Layer =>
  (context) => {
    under(context);
    const longSide = Math.max(context.canvas.width, context.canvas.height);
    const kinds = edges.map(kindOnSheet);
    const decided = edges.filter((edge) => edge.wish !== undefined);
    context.lineCap = 'round';
    context.lineJoin = 'round';
    for (const [colour, casing] of [
      ['white', 0.0022],
      ['black', 0],
    ] as const) {
      for (const kind of ['lost', 'soft', 'found', 'hard'] as const) {
        const line = edgeLines[kind];
        context.strokeStyle = colour;
        context.lineWidth = (line.width + casing) * longSide;
        context.setLineDash(line.dash.map((share) => share * longSide));
        context.beginPath();
        edges.forEach((edge, i) => {
          if (kinds[i] === kind) tracePath(context, edge);
        });
        context.stroke();
      }
      context.setLineDash([]);
      context.lineWidth = (decidedMark.width + casing) * longSide;
      context.beginPath();
      for (const edge of decided) traceMark(context, edge);
      context.stroke();
    }
  };

/** Ways are told apart by line alone: full, dashes, dots. Lengths are shares of the long side. */
export const whiteLines: Readonly<Record<WhiteWay, EdgeLine>> = {
  round: { width: 0.0034, dash: [] },
  mask: { width: 0.0034, dash: [0.0095, 0.0095] },
  last: { width: 0.004, dash: [0.0001, 0.0075] },
};

/** How much of the photo is covered where the paper stays white. */
const paper = 'rgb(255 255 255 / 0.9)';

function traceOutline(context: LayerContext, { points }: WhiteOutline): void {
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
    for (const outline of outlines) traceOutline(context, outline);
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
        for (const outline of outlines)
          if (ways[outline.white] === way) traceOutline(context, outline);
        context.stroke();
      }
    context.setLineDash([]);
  };

const pencil = 'rgb(64 64 64)';
/** Thinner lines of a drawing would not be seen, px. */
const thinnestPx = 1.2;

/** The drawing to transfer over a sheet, in pencil. */
export const drawingLayer =
  (under: Layer, outline: Outline): Layer =>
  (context) => {
    under(context);
    const pxPerMm = context.canvas.width / outline.widthMm;
    context.save();
    context.scale(pxPerMm, context.canvas.height / outline.heightMm);
    context.strokeStyle = pencil;
    context.lineCap = 'round';
    context.lineJoin = 'round';
    for (const { d, width, dash } of outlinePaths(outline, {
      grid: false,
      soft: true,
      inner: true,
    })) {
      context.lineWidth = Math.max(width, thinnestPx / pxPerMm);
      context.setLineDash([...dash]);
      context.stroke(new Path2D(d));
    }
    context.restore();
  };
