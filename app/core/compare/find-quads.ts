import type { Point } from '../colour/lab.ts';
import type { LinearRaster } from '../raster/linear-raster.ts';
import { type Corners, isConvex } from './homography.ts';

/** A place where a photo may have a sheet, px; and how much of its outline shows as an edge, 0..1. */
export interface Quad {
  readonly corners: Corners;
  readonly shown: number;
}

/** How steep the picture is at every pixel, and across which direction, radians. */
interface Slopes {
  readonly width: number;
  readonly height: number;
  readonly steep: Float32Array;
  readonly across: Float32Array;
}

/** Slopes of the root of the light, which is about as the eye has it, the three channels' own added up. */
function slopesOf({ width, height, red, green, blue }: LinearRaster): Slopes {
  const planes = [red, green, blue].map((plane) => plane.map((v) => Math.sqrt(Math.max(0, v))));
  const steep = new Float32Array(width * height);
  const across = new Float32Array(width * height);
  for (let y = 1; y < height - 1; y++)
    for (let i = y * width + 1; i < (y + 1) * width - 1; i++) {
      let [xx, xy, yy] = [0, 0, 0];
      for (const p of planes) {
        const dx =
          p[i + 1 - width] -
          p[i - 1 - width] +
          2 * (p[i + 1] - p[i - 1]) +
          p[i + 1 + width] -
          p[i - 1 + width];
        const dy =
          p[i - 1 + width] -
          p[i - 1 - width] +
          2 * (p[i + width] - p[i - width]) +
          p[i + 1 + width] -
          p[i + 1 - width];
        xx += dx * dx;
        xy += dx * dy;
        yy += dy * dy;
      }
      // The direction all channels agree on: Di Zenzo, S. (1986), A note on the gradient of a multi-image.
      across[i] = 0.5 * Math.atan2(2 * xy, xx - yy);
      const along = Math.hypot((xx - yy) / 2, xy);
      steep[i] = Math.sqrt(Math.max(0, (xx + yy) / 2 + along));
    }
  return { width, height, steep, across };
}

const turns = 180;
const cosines = Float64Array.from({ length: turns }, (_, n) => Math.cos((n * Math.PI) / turns));
const sines = Float64Array.from({ length: turns }, (_, n) => Math.sin((n * Math.PI) / turns));

/** A straight line: x cos(angle) + y sin(angle) = away; px from the upper left. */
interface Line {
  readonly angle: number;
  readonly away: number;
  readonly votes: number;
}

/** The part of all pixels that are taken for edges (own). */
const edgeShare = 0.12;
const mostLines = 26;

/** The straight lines that show most: Hough's transform, every edge pixel voting across its own slope (Duda, R. and Hart, P., 1972). */
function straightLines({ width, height, steep, across }: Slopes): Line[] {
  const limit = Float32Array.from(steep).sort()[Math.floor((1 - edgeShare) * steep.length)];
  const reach = Math.ceil(Math.hypot(width, height));
  const rows = 2 * reach + 1;
  const votes = new Float32Array(turns * rows);
  for (let y = 1, i = width + 1; y < height - 1; y++, i = y * width + 1)
    for (let x = 1; x < width - 1; x++, i++) {
      if (!(steep[i] > limit)) continue;
      const middle = Math.round((across[i] * turns) / Math.PI);
      for (let k = middle - 2; k <= middle + 2; k++) {
        const turn = ((k % turns) + turns) % turns;
        const away = x * cosines[turn] + y * sines[turn];
        const row = away + reach;
        const low = Math.floor(row);
        votes[turn * rows + low] += 1 - (row - low);
        votes[turn * rows + low + 1] += row - low;
      }
    }
  const lines: Line[] = [];
  const least = 0.12 * Math.min(width, height);
  while (lines.length < mostLines) {
    let best = 0;
    for (let n = 1; n < votes.length; n++) if (votes[n] > votes[best]) best = n;
    if (votes[best] < least) break;
    const [turn, row] = [Math.floor(best / rows), best % rows];
    lines.push({ angle: (turn * Math.PI) / turns, away: row - reach, votes: votes[best] });
    // Beyond half a turn a line comes again with its sign turned.
    for (let k = turn - 3; k <= turn + 3; k++) {
      const wrapped = ((k % turns) + turns) % turns;
      const middle = k === wrapped ? row : 2 * reach - row;
      for (let r = Math.max(0, middle - 3); r <= Math.min(rows - 1, middle + 3); r++)
        votes[wrapped * rows + r] = 0;
    }
  }
  return lines;
}

function meeting(one: Line, two: Line): Point | null {
  const [c1, s1, c2, s2] = [
    Math.cos(one.angle),
    Math.sin(one.angle),
    Math.cos(two.angle),
    Math.sin(two.angle),
  ];
  const det = c1 * s2 - c2 * s1;
  if (Math.abs(det) < 0.3) return null;
  return [(one.away * s2 - two.away * s1) / det, (c1 * two.away - c2 * one.away) / det];
}

/** Angle between two lines, 0 to a quarter turn. */
function between(one: Line, two: Line): number {
  const turn = Math.abs(one.angle - two.angle) % Math.PI;
  return Math.min(turn, Math.PI - turn);
}

/** Share of a side along which the picture is steep across it. */
function shownAlong(
  { width, height, steep, across }: Slopes,
  limit: number,
  [x, y]: Point,
  [u, v]: Point,
): number {
  const readings = 40;
  const normal = Math.atan2(u - x, y - v);
  let shown = 0;
  for (let n = 0; n < readings; n++) {
    const part = (n + 0.5) / readings;
    const [px, py] = [x + part * (u - x), y + part * (v - y)];
    let found = false;
    for (let d = -2; d <= 2 && !found; d++) {
      const column = Math.round(px + d * Math.cos(normal));
      const row = Math.round(py + d * Math.sin(normal));
      if (column < 1 || row < 1 || column >= width - 1 || row >= height - 1) continue;
      const i = row * width + column;
      const turn = Math.abs(across[i] - normal) % Math.PI;
      found = steep[i] > limit && Math.min(turn, Math.PI - turn) < 0.3;
    }
    if (found) shown++;
  }
  return shown / readings;
}

/** Sides of a sheet lean towards each other by less than this, and stand on each other by more (own). */
const mostLean = 0.6;
const leastCorner = 1;
/** A sheet fills at least so much of the photo (own): less is too coarse to be judged. */
const leastArea = 0.08;
/** Corners may lie so far off the photo, as a share of its sides. */
const mayLieOff = 0.02;

/** Quadrangles whose corners are all this near, as a share of the long side, are taken for one (own). */
const sameWithin = 0.025;

const areaOf = (corners: Corners): number => {
  let sum = 0;
  for (let n = 0; n < 4; n++) {
    const [[x, y], [u, v]] = [corners[n], corners[(n + 1) % 4]];
    sum += x * v - u * y;
  }
  return Math.abs(sum) / 2;
};

/** Clockwise from the one nearest to the upper left corner of the photo. */
function inOrder(points: readonly Point[]): Corners {
  const [mx, my] = [0, 1].map((c) => points.reduce((sum, point) => sum + point[c], 0) / 4);
  const round = [...points].sort(
    (one, two) => Math.atan2(one[1] - my, one[0] - mx) - Math.atan2(two[1] - my, two[0] - mx),
  );
  const first = round.reduce(
    (best, [x, y], n) => (x + y < round[best][0] + round[best][1] ? n : best),
    0,
  );
  const corner = (n: number): Point => round[(first + n) % 4];
  return [corner(0), corner(1), corner(2), corner(3)];
}

const farthest = (one: Corners, two: Corners): number =>
  Math.max(...one.map(([x, y], n) => Math.hypot(x - two[n][0], y - two[n][1])));

/** Quadrangles of straight lines in a small raster, those whose outline shows most first, at most `most` of them. */
export function findQuads(raster: LinearRaster, most: number): Quad[] {
  const slopes = slopesOf(raster);
  const { width, height, steep } = slopes;
  const limit = Float32Array.from(steep).sort()[Math.floor((1 - edgeShare) * steep.length)];
  const lines = straightLines(slopes);
  const pairs: (readonly [Line, Line])[] = [];
  const apart = 0.2 * Math.min(width, height);
  for (let i = 0; i < lines.length; i++)
    for (let j = i + 1; j < lines.length; j++) {
      if (between(lines[i], lines[j]) > mostLean) continue;
      const flipped = Math.abs(lines[i].angle - lines[j].angle) > Math.PI / 2;
      const gap = Math.abs(lines[i].away - (flipped ? -lines[j].away : lines[j].away));
      if (gap > apart) pairs.push([lines[i], lines[j]]);
    }
  const quads: Quad[] = [];
  for (let i = 0; i < pairs.length; i++)
    for (let j = i + 1; j < pairs.length; j++) {
      const [[a, b], [c, d]] = [pairs[i], pairs[j]];
      if (between(a, c) < leastCorner || between(b, d) < leastCorner) continue;
      const points = [meeting(a, c), meeting(a, d), meeting(b, d), meeting(b, c)];
      const found = points.filter(
        (point): point is Point =>
          point !== null &&
          point[0] > -mayLieOff * width &&
          point[0] < (1 + mayLieOff) * width &&
          point[1] > -mayLieOff * height &&
          point[1] < (1 + mayLieOff) * height,
      );
      if (found.length < 4) continue;
      const corners = inOrder(found);
      const area = areaOf(corners) / (width * height);
      if (area < leastArea || !isConvex(corners)) continue;
      const sides = corners.map((corner, n) =>
        shownAlong(slopes, limit, corner, corners[(n + 1) % 4]),
      );
      const shown = (sides[0] + sides[1] + sides[2] + sides[3]) / 4;
      if (Math.min(...sides) < 0.25) continue;
      quads.push({ corners, shown: shown * (0.8 + 0.2 * Math.min(1, area / 0.5)) });
    }
  quads.sort((one, two) => two.shown - one.shown);
  const kept: Quad[] = [];
  const same = sameWithin * Math.max(width, height);
  for (const quad of quads) {
    if (kept.length >= most) break;
    if (kept.every(({ corners }) => farthest(corners, quad.corners) > same)) kept.push(quad);
  }
  return kept;
}
