import { solveSmall } from '../edges/solve-small.ts';
import type { Tile } from './paper-tiles.ts';

/** How bright bare paper is at a place: for each channel the logarithm is a + b x + c y, x and y 0..1. */
export interface PaperLight {
  readonly planes: readonly (readonly [number, number, number])[];
  /** The tiles that were taken for paper. */
  readonly paper: readonly Tile[];
}

/** Paper strays no further from its plane than this: 6 % of its light, 4 % of its colour; own choice. */
const strayLight = 0.06;
const strayColour = 0.04;
const mostRounds = 25;

function planeThrough(tiles: readonly Tile[], of: (tile: Tile) => number) {
  const matrix = new Float64Array(9);
  const right = new Float64Array(3);
  for (const tile of tiles) {
    const row = [1, tile.place[0] - 0.5, tile.place[1] - 0.5];
    for (let i = 0; i < 3; i++) {
      right[i] = (right[i] as number) + (row[i] as number) * of(tile);
      for (let j = 0; j < 3; j++) {
        matrix[i * 3 + j] = (matrix[i * 3 + j] as number) + (row[i] as number) * (row[j] as number);
      }
    }
  }
  // A few tiles in a row would leave the tilt open: a touch of 'level' closes it.
  for (const i of [4, 8]) matrix[i] = (matrix[i] as number) + 1e-3 * tiles.length;
  solveSmall(matrix, right, 3);
  return [right[0] as number, right[1] as number, right[2] as number] as const;
}

const at = (plane: readonly [number, number, number], { place }: Tile): number =>
  plane[0] + plane[1] * (place[0] - 0.5) + plane[2] * (place[1] - 0.5);

/**
 * The light on the sheet, from its bare paper: planes fitted to the logarithms of red, green, blue over
 * tiles, from the brightest colour that much of the photo has, dropping what is no paper until nothing
 * changes. Null where hardly any tile agrees.
 */
export function paperLight(tiles: readonly Tile[], fewestShare = 0.06): PaperLight | null {
  const bright = [...tiles].sort((one, two) => two.logLuminance - one.logLuminance);
  const start = bright[Math.floor(0.1 * bright.length)];
  if (!start) return null;
  // Half an e-fold of light and a tenth of colour round the bright start: paper in uneven light.
  let paper = tiles.filter(
    (tile) =>
      Math.abs(tile.logLuminance - start.logLuminance) < 0.5 &&
      colourApart(tile, start.logs) < 0.15,
  );
  let planes = channelPlanes(paper);
  let stray = 4;
  for (let round = 0; round < mostRounds && paper.length > 0; round++) {
    const kept = tiles.filter((tile) => {
      const logs = planes.map((plane) => at(plane, tile));
      const light = tile.logLuminance - at(planes[3] as readonly [number, number, number], tile);
      // Paint and shadow only ever take light away: what lies under the plane goes first.
      return (
        light > -strayLight * stray &&
        light < 2 * strayLight * stray &&
        colourApart(tile, logs) < strayColour * stray
      );
    });
    const same = stray === 1 && kept.length === paper.length;
    if (kept.length < 3) break;
    paper = kept;
    planes = channelPlanes(paper);
    if (same) break;
    stray = Math.max(1, stray * 0.7);
  }
  return paper.length >= Math.max(3, fewestShare * tiles.length)
    ? { planes: planes.slice(0, 3), paper }
    : null;
}

const channelPlanes = (tiles: readonly Tile[]) => [
  ...([0, 1, 2] as const).map((c) => planeThrough(tiles, (tile) => tile.logs[c])),
  planeThrough(tiles, (tile) => tile.logLuminance),
];

/** How far two colours differ but for their brightness. */
function colourApart(
  { logs: [r, g, b] }: Tile,
  [r2 = 0, g2 = 0, b2 = 0]: readonly number[],
): number {
  return Math.max(Math.abs(r - g - (r2 - g2)), Math.abs(b - g - (b2 - g2)));
}
