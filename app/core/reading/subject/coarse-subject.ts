import { chamferDistances } from '../../raster/distance-map.ts';
import { insideStroke, paintStroke } from '../../raster/paint-stroke.ts';
import type { PixelSize } from '../../raster/size.ts';
import { cutLine, cutSide } from './cut-line.ts';
import type { SubjectStroke } from './subject.ts';
import { type ColourGrid, colourBinAt, learnedFavour } from './subject-colours.ts';

/** The subject on a grid of cells. */
interface CoarseSubject {
  /** 1 for subject. */
  readonly sides: Uint8Array;
  /** What each colour bin speaks for; see `learnedFavour`. */
  readonly favour: Float32Array;
}

const mostRounds = 4;
/** The line has come to rest when no more than this share of the circle changes sides. */
const restingShare = 0.001;
/** If less of the circle than this is left, nothing in it differs from its ground: her line stands. */
const leastOfCircle = 0.03;
/** The line is found anew within so many widths of the brush round a correction; elsewhere it stays. */
const reachOfBrush = 1.5;

const countOf = (map: Uint8Array): number => map.reduce((sum, own) => sum + own, 0);

class Sides {
  readonly #grid: ColourGrid;
  readonly #bins: Int32Array;
  readonly #places: CirclePlaces;
  sides: Uint8Array;
  favour: Float32Array;

  constructor(grid: ColourGrid, inside: Uint8Array) {
    this.#grid = grid;
    this.#bins = Int32Array.from(inside, (_, i) => colourBinAt(grid, i));
    this.#places = circlePlaces(inside, grid.size);
    this.sides = inside.slice();
    this.favour = this.#learn();
  }

  #learn(): Float32Array {
    return learnedFavour(this.#bins, this.sides, this.#places.weights);
  }

  /** Sorts the open cells of `known`, which becomes the sides; answers how many changed. */
  sort(known: Uint8Array): number {
    const { prior } = this.#places;
    const favour = this.#learn();
    const favourAt = (i: number): number => prior[i] + favour[this.#bins[i]];
    const before = this.sides;
    cutLine({ colours: this.#grid, known, favourAt });
    this.favour = favour;
    this.sides = known;
    return known.reduce((sum, side, i) => sum + (side === before[i] ? 0 : 1), 0);
  }
}

/** Finds the subject within the circle: colours learned, line cut, and again until nothing changes. */
function* withinCircle(found: Sides, inside: Uint8Array): Generator<void> {
  const known = inside.map((own) => (own === 1 ? cutSide.open : cutSide.ground));
  for (let round = 0; round < mostRounds; round++) {
    const changed = found.sort(known.slice());
    yield;
    if (countOf(found.sides) < leastOfCircle * countOf(inside)) {
      found.sides = inside.slice();
      break;
    }
    if (changed <= restingShare * countOf(inside)) break;
  }
}

function* corrected(
  found: Sides,
  corrections: readonly SubjectStroke[],
  { size }: ColourGrid,
): Generator<void> {
  const longSide = Math.max(size.width, size.height);
  const seeds = new Uint8Array(found.sides.length).fill(cutSide.open);
  for (const { mode, path, brush } of corrections) {
    const radius = Math.max(0.75, (brush * longSide) / 2);
    const side = mode === 'add' ? cutSide.subject : cutSide.ground;
    const near = new Uint8Array(seeds.length);
    paintStroke(near, size, path, radius + 2 * reachOfBrush * radius, 1);
    paintStroke(seeds, size, path, radius, side);
    found.sides = found.sides.map((own, i) => (seeds[i] === cutSide.open ? own : seeds[i]));
    const { sides } = found;
    found.sort(
      seeds.map((seed, i) => {
        if (seed !== cutSide.open) return seed;
        if (near[i] === 1) return cutSide.open;
        return sides[i] === 1 ? cutSide.subject : cutSide.ground;
      }),
    );
    yield;
  }
}

/** From her circle and her corrections, in order, to the subject on the grid; null where the circle is empty. */
export function* coarseSubject(
  grid: ColourGrid,
  [circle, ...corrections]: readonly SubjectStroke[],
): Generator<void, CoarseSubject | null> {
  const inside = insideStroke(circle?.path ?? [], grid.size);
  if (!inside.includes(1)) return null;
  const found = new Sides(grid, inside);
  yield* withinCircle(found, inside);
  yield* corrected(found, corrections, grid);
  return { sides: found.sides, favour: found.favour };
}

/** What a cell's place relative to the circle tells. */
interface CirclePlaces {
  /** Weight of a cell's colour as a sample: the ground beside the circle is what matters. */
  readonly weights: Float32Array;
  /** Added to what the colours favour. */
  readonly prior: Float32Array;
}

/** Painters circle loosely: the line most likely lies so deep in the circle, as a share of its size. */
const usualGap = 0.05;
const mostPrior = 0.8;
/** Decay length of the background's weight outside the circle, as a share of the circle's size. */
const groundReach = 0.35;
const leastWeight = 0.02;

/** `inside` holds 1 within the circle. */
function circlePlaces(inside: Uint8Array, size: PixelSize): CirclePlaces {
  let area = 0;
  for (let i = 0; i < inside.length; i++) area += inside[i];
  const side = Math.sqrt(Math.max(1, area));
  const deep = chamferDistances(inside, 0, size);
  const away = chamferDistances(inside, 1, size);
  const prior = deep.map((distance) => {
    const gap = Math.min(distance / side, 1);
    return mostPrior * Math.max(-1, Math.min(1, (gap - usualGap) / usualGap));
  });
  const weights = away.map((distance) =>
    Math.max(leastWeight, Math.exp(-distance / (groundReach * side))),
  );
  return { prior, weights };
}
