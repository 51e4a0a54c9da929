import { findMinimumCut } from '../../numeric/max-flow.ts';
import type { PixelSize } from '../../raster/size.ts';
import { type ColourBytes, codesPerLightness } from './subject-colours.ts';

interface CutInput {
  readonly colours: ColourBytes;
  /** Per cell one of `cutSide`; the open ones are sorted in place into the two others. */
  readonly known: Uint8Array;
  /** Of an open cell: above 0 for subject, below 0 for ground, in natural logarithms of odds. */
  favourAt(place: number): number;
}

/** What is known of a cell before the line is sought. */
export const cutSide = { ground: 0, subject: 1, open: 2 } as const;

/** Smoothness weight (lambda) of the graph cut: what a line of one px costs in plain colour (own). */
const smoothness = 3;
/** Share of that cost which is left where the colours beside the line differ most (own). */
const leastHold = 0.08;
/** Fixed-point scale: units of flow to one natural logarithm of odds. */
const unitsPerOne = 256;
/** Differences count relative to their mean, which is grain; it is taken for at least this (squared). */
const leastMean = 1.5;
/** The table of holds has so many steps to one mean difference, and covers so many mean differences. */
const tableSteps = 64;
const tableReach = 16;

/** Squared differences in colour to every neighbour of the open cells; -1 where there is none. */
function differences({ lightness, a, b }: ColourBytes, { cells, around }: OpenCells): Float32Array {
  const perCode = 1 / (codesPerLightness * codesPerLightness);
  const found = new Float32Array(around.length).fill(-1);
  for (let arc = 0; arc < around.length; arc++) {
    const other = around[arc];
    if (other < 0) continue;
    const one = cells[arc >> 3];
    const l = lightness[one] - lightness[other];
    const u = a[one] - a[other];
    const v = b[one] - b[other];
    found[arc] = l * l * perCode + u * u + v * v;
  }
  return found;
}

function meanOf(differences: Float32Array): number {
  let sum = 0;
  let count = 0;
  for (const difference of differences) {
    if (difference < 0) continue;
    sum += difference;
    count++;
  }
  return Math.max(leastMean, count > 0 ? sum / count : 0);
}

/** Capacity between two neighbours, units, by their difference in mean differences x `tableSteps`. */
const holds = Float32Array.from({ length: tableSteps * tableReach + 1 }, (_, step) => {
  const apart = Math.exp((-0.5 * step) / tableSteps);
  return smoothness * unitsPerOne * (leastHold + (1 - leastHold) * apart);
});

/**
 * Where subject and ground part: every open cell to the side its colour favours, with a line as
 * short as may be that runs where colours differ. Writes 1 for subject, 0 for ground.
 * Source of the weights: Boykov, Jolly, 'Interactive Graph Cuts for Optimal Boundary & Region
 * Segmentation of Objects in N-D Images', 2001; their scale: Rother, Kolmogorov, Blake,
 * 'GrabCut', 2004.
 */
export function cutLine({ colours, known, favourAt }: CutInput): void {
  const open = openCells(known, colours.size);
  const { cells, around, nodes } = open;
  const apart = differences(colours, open);
  const scale = tableSteps / meanOf(apart);
  const capacities = new Int32Array(around.length);
  const excess = new Int32Array(cells.length);
  for (let arc = 0; arc < around.length; arc++) {
    const difference = apart[arc];
    if (difference < 0) continue;
    const step = Math.min(holds.length - 1, Math.round(difference * scale));
    const units = Math.round(holds[step] * (slanting[arc & 7] === 1 ? Math.SQRT1_2 : 1));
    if (nodes[arc] >= 0) capacities[arc] = units;
    else {
      const way = known[around[arc]] === cutSide.subject ? units : -units;
      excess[arc >> 3] = excess[arc >> 3] + way;
    }
  }
  for (let node = 0; node < cells.length; node++) {
    const own = Math.round(favourAt(cells[node]) * unitsPerOne);
    excess[node] = excess[node] + own;
  }
  const cut = findMinimumCut({ neighbours: nodes, capacities, excess });
  for (let node = 0; node < cells.length; node++) {
    known[cells[node]] = cut[node] === 1 ? cutSide.subject : cutSide.ground;
  }
}

/** Neighbours stand in this order, row by row; the way back of direction d is 7 - d. */
const right = Int8Array.of(-1, 0, 1, -1, 1, -1, 0, 1);
const down = Int8Array.of(-1, -1, -1, 0, 0, 1, 1, 1);

/** By direction: 1 where it runs from corner to corner. */
const slanting = right.map((dx, direction) => (dx !== 0 && down[direction] !== 0 ? 1 : 0));

/** The cells whose side is open, numbered from 0, and what lies around each in eight directions. */
interface OpenCells {
  /** Place of every open cell in the picture. */
  readonly cells: Int32Array;
  /** Per open cell and direction: the place there, -1 beyond the picture. */
  readonly around: Int32Array;
  /** Per open cell and direction: the number of the open cell there, -1 for none. */
  readonly nodes: Int32Array;
}

const isOpen = 2;

/** `known` holds 2 for open cells. */
export function openCells(known: Uint8Array, { width, height }: PixelSize): OpenCells {
  const numbers = new Int32Array(known.length).fill(-1);
  let count = 0;
  for (let i = 0; i < known.length; i++) if (known[i] === isOpen) numbers[i] = count++;
  const cells = new Int32Array(count);
  const around = new Int32Array(count * 8).fill(-1);
  const nodes = new Int32Array(count * 8).fill(-1);
  for (let i = 0; i < known.length; i++) {
    const node = numbers[i];
    if (node < 0) continue;
    cells[node] = i;
    const x = i % width;
    const y = Math.floor(i / width);
    for (let direction = 0; direction < 8; direction++) {
      const column = x + right[direction];
      const row = y + down[direction];
      if (column < 0 || column >= width || row < 0 || row >= height) continue;
      const other = row * width + column;
      around[node * 8 + direction] = other;
      nodes[node * 8 + direction] = numbers[other];
    }
  }
  return { cells, around, nodes };
}
