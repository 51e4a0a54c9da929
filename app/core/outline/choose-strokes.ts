import type { Point } from '../colour/lab.ts';
import { smoothLine } from '../raster/smooth-line.ts';

/** hard: a full line; found: a thin full line; soft: dots. What is lost is not drawn. */
export type OutlineKind = 'hard' | 'found' | 'soft';

/** white: round paper kept white; outer: between things; inner: from one value to the next within one. */
export type OutlineRole = 'white' | 'outer' | 'inner';

export interface OutlineLine {
  readonly kind: OutlineKind;
  readonly role: OutlineRole;
  /** mm on the sheet from its left and from its top. */
  readonly points: readonly Point[];
}

/** One piece of the drawing as it was measured, before pieces are joined. */
export interface OutlinePiece {
  readonly kind: OutlineKind;
  readonly role: OutlineRole;
  /** mm on the sheet, from end to end; two points at least. */
  readonly points: readonly Point[];
  /** L* between its sides. */
  readonly contrast: number;
  /** How near it is to the centre of interest, up to 1. */
  readonly near: number;
}

// All figures of this file: own, but that a drawing to paint on has few lines (common practice, no source).
/** A drawing has no more strokes than this: more are not carried over by hand. */
export const mostStrokes = 150;
/** Ends this near to each other may be one stroke, mm ... */
const joinedWithin = 1.5;
/** ... where the line turns by less than this there, as a cosine: 60 degrees. */
const leastCosine = 0.5;
/** The direction of an end is seen over this length, mm. */
const endMm = 3;
/** Shorter strokes by themselves are not worth drawing, mm; round whites they are. */
const leastStrokeMm = 2;
/** A stroke changes how it is drawn for no less than this, mm. */
const leastChangeMm = 4;
/** Round whites come first: what is lost of them is lost. */
const roleWeight: Readonly<Record<OutlineRole, number>> = { white: 3, outer: 1, inner: 0.7 };
/** What is lost softly is found again by the brush. */
const kindWeight: Readonly<Record<OutlineKind, number>> = { hard: 1, found: 0.8, soft: 0.5 };
/** Contrast beyond this makes no line more needed, L*. */
const plainContrast = 25;
/** Every line has some use, however faint. */
const leastContrast = 5;

const lengthOf = (points: readonly Point[]): number =>
  points.reduce((sum, [x, y], i) => {
    const [fromX, fromY] = points[i - 1] ?? [x, y];
    return sum + Math.hypot(x - fromX, y - fromY);
  }, 0);

/** One of the two ends of a piece: where it is, and the direction in which the piece leaves it. */
interface End {
  readonly piece: number;
  readonly isLast: boolean;
  readonly at: Point;
  readonly inward: Point;
}

function endOf(piece: number, points: readonly Point[], isLast: boolean): End {
  const line = isLast ? points.toReversed() : points;
  const at = line[0];
  const inner =
    line.find(([x, y]) => Math.hypot(x - at[0], y - at[1]) >= endMm) ?? line[line.length - 1];
  const [dx, dy] = [inner[0] - at[0], inner[1] - at[1]];
  const long = Math.hypot(dx, dy) || 1;
  return { piece, isLast, at, inward: [dx / long, dy / long] };
}

/** Pairs of ends that go on into each other, the straightest first. */
function continuations(ends: readonly End[], pieces: readonly OutlinePiece[]) {
  const cells = new Map<string, number[]>();
  const cellOf = ([x, y]: Point): readonly [number, number] => [
    Math.floor(x / joinedWithin),
    Math.floor(y / joinedWithin),
  ];
  for (const [n, { at }] of ends.entries()) {
    const key = cellOf(at).join();
    cells.set(key, [...(cells.get(key) ?? []), n]);
  }
  const pairs: { one: number; two: number; cosine: number }[] = [];
  for (const [one, end] of ends.entries()) {
    const [column, row] = cellOf(end.at);
    for (let dy = -1; dy <= 1; dy++) {
      for (let dx = -1; dx <= 1; dx++) {
        for (const two of cells.get([column + dx, row + dy].join()) ?? []) {
          const other = ends[two];
          if (two <= one || other.piece === end.piece) continue;
          const [a, b] = [pieces[end.piece], pieces[other.piece]];
          if ((a.role === 'white') !== (b.role === 'white')) continue;
          if (Math.hypot(end.at[0] - other.at[0], end.at[1] - other.at[1]) > joinedWithin) continue;
          const cosine = -(end.inward[0] * other.inward[0] + end.inward[1] * other.inward[1]);
          if (cosine >= leastCosine) pairs.push({ one, two, cosine });
        }
      }
    }
  }
  return pairs.sort((p, q) => q.cosine - p.cosine || p.one - q.one || p.two - q.two);
}

/** Pieces in the order a pencil draws them, each from its start to its end. */
type Stroke = readonly OutlinePiece[];

/** Pieces that go on into each other become one stroke. */
function joinPieces(pieces: readonly OutlinePiece[]): Stroke[] {
  const ends = pieces.flatMap(({ points }, piece) => [
    endOf(piece, points, false),
    endOf(piece, points, true),
  ]);
  const goesOn = new Int32Array(ends.length).fill(-1);
  for (const { one, two } of continuations(ends, pieces)) {
    if (goesOn[one] >= 0 || goesOn[two] >= 0) continue;
    goesOn[one] = two;
    goesOn[two] = one;
  }
  const done = new Uint8Array(pieces.length);
  /** From an end through its piece and on, until nothing follows or what is drawn already. */
  const follow = (from: number): OutlinePiece[] => {
    const stroke: OutlinePiece[] = [];
    for (let end = from; end >= 0; end = goesOn[end ^ 1]) {
      const { piece, isLast } = ends[end];
      if (done[piece] === 1) break;
      done[piece] = 1;
      const { points, ...more } = pieces[piece];
      stroke.push({ ...more, points: isLast ? points.toReversed() : points });
    }
    return stroke;
  };
  const open = [...ends.keys()].filter((end) => goesOn[end] < 0);
  const joined = open.flatMap((end) => (done[ends[end].piece] === 1 ? [] : [follow(end)]));
  const rings = pieces.flatMap((_, piece) => (done[piece] === 1 ? [] : [follow(2 * piece)]));
  return [...joined, ...rings];
}

const strokeLength = (stroke: Stroke): number =>
  stroke.reduce((sum, { points }) => sum + lengthOf(points), 0);

/** The lines of a stroke: where it changes how it is drawn a line ends, but not for less than a few mm. */
function linesOf(stroke: Stroke): OutlineLine[] {
  const lines: { kind: OutlineKind; role: OutlineRole; points: Point[] }[] = [];
  for (const { kind, role, points } of stroke) {
    const last = lines.at(-1);
    const isSame = last?.kind === kind && last.role === role;
    if (last && (isSame || lengthOf(points) < leastChangeMm)) last.points.push(...points);
    else if (last && lengthOf(last.points) < leastChangeMm)
      Object.assign(last, { kind, role, points: [...last.points, ...points] });
    else
      lines.push({
        kind,
        role,
        points: last ? [last.points.at(-1) as Point, ...points] : [...points],
      });
  }
  return lines.map((line) => ({ ...line, points: smoothLine(line.points) }));
}

/** What a stroke is worth to who draws it: length tells less than being seen and being near. */
function worthOf(stroke: Stroke): number {
  const seen = stroke.reduce(
    (sum, { kind, role, contrast, near, points }) =>
      sum +
      lengthOf(points) *
        roleWeight[role] *
        kindWeight[kind] *
        near *
        Math.min(plainContrast, Math.max(leastContrast, contrast)),
    0,
  );
  return seen / Math.sqrt(strokeLength(stroke) || 1);
}

/**
 * The strokes a painter would draw of all that was measured: pieces that go on into each other are joined, and of the
 * strokes the `most` that tell most are taken. Their lines in the old order, mm.
 */
export function chooseStrokes(pieces: readonly OutlinePiece[], most = mostStrokes): OutlineLine[] {
  const strokes = joinPieces(pieces).filter(
    (stroke) => stroke[0].role === 'white' || strokeLength(stroke) >= leastStrokeMm,
  );
  const worth = strokes.map(worthOf);
  const best = [...strokes.keys()].sort((m, n) => worth[n] - worth[m] || m - n).slice(0, most);
  return best.sort((m, n) => m - n).flatMap((n) => linesOf(strokes[n]));
}
