import type { Point } from '../../colour/lab.ts';
import { largestShapes } from '../../raster/largest-shapes.ts';
import type { PixelSize } from '../../raster/size.ts';
import type { ColourSquares } from '../../reading/colour-squares.ts';
import type { Slot } from '../../reading/slot.ts';
import type { Mix, Step, WashPlan } from '../plan.ts';
import type { Run } from './run.ts';

/** Where to paint in a step: a shape in its turn, where a second puddle comes in, or where paint lies thick or thin. */
export interface WashPlace {
  /** 0..1 of the picture from its upper left. */
  readonly place: Point;
  /** 1 is painted first; null for what is inside a shape pointed at already. */
  readonly turn: number | null;
  /** Letter of the puddle it is painted from; null where none is told. */
  readonly puddle: string | null;
  readonly amount: 'strong' | 'thin' | null;
}

interface Seen {
  readonly slots: readonly Slot[];
  readonly slotMap: Uint8Array;
  readonly raster: PixelSize;
  readonly squares?: ColourSquares;
}

type Told = Pick<WashPlan, 'mixes' | 'runs'>;

// All figures of this file: own.
/** Shapes pointed at in one step: no one holds more in mind. */
const mostPointedAt = 7;
/** A second puddle is shown where it has so much of the paint, ... */
const secondFrom = 0.35;
/** ... in the mixes that cover most, no more than this: more tags than shapes are no help. */
const mostSecond = 3;
/** Thick and thin are shown where one is so many times the other, ... */
const thickOverThin = 2;
/** ... of the mixes that cover most, no more than this. */
const mostShaded = 2;
/** What comes as near as this to the most, of all it varies, is as good a place for a tag. */
const nearTheMost = 0.15;
/** Tags nearer to each other than this, of the picture's sides, cover one another. */
const apart = 0.1;

/** Steps that go over all of the sheet, or over none of it, point at nothing. */
const pointsAt = ({ kind }: Pick<Step, 'kind'>): boolean =>
  kind !== 'transfer' && kind !== 'last-look';

const isCovered = ([x, y]: Point, by: readonly WashPlace[]): boolean =>
  by.some(({ place }) => Math.abs(place[0] - x) < apart && Math.abs(place[1] - y) < apart);

/**
 * The largest shapes a step works at, at most seven, in their turn: big before small (R3). What is painted from one mix
 * and touches is one shape, as the mixes run over lighter and darker values; each kept white is one by itself.
 */
function shapesInTurn(step: Step, { slots, slotMap, raster }: Seen, { mixes }: Told): WashPlace[] {
  const names: string[] = [];
  const letters: (string | null)[] = [];
  // A wash over the whole sheet paints ground and subject from the same mixes.
  const asOne = step.kind === 'wash' && step.key.split('/')[1] === 'sheet';
  const kindOf = (index: number): number => {
    const slot = slots[index];
    if (!slot || !step.slots.includes(index)) return -1;
    const passage = asOne ? 'sheet' : slot.passage;
    const name = slot.reserve ? 'white' : `${passage}/${slot.family}`;
    if (!names.includes(name)) {
      names.push(name);
      const mix = mixes.find(
        (each) =>
          step.mixes.includes(each.id) &&
          each.family === slot.family &&
          (asOne || each.passage === slot.passage),
      );
      letters.push(slot.reserve || step.kind !== 'wash' ? null : (mix?.puddle ?? null));
    }
    return names.indexOf(name);
  };
  const places: WashPlace[] = [];
  for (const { place, kind } of largestShapes(slotMap, raster, kindOf, mostPointedAt)) {
    if (isCovered(place, places)) continue;
    places.push({ place, turn: places.length + 1, puddle: letters[kind], amount: null });
  }
  return places;
}

/** The middle of a square of the sheet, 0..1; squares may reach over its border. */
function middleOf(square: number, { across, sidePx }: ColourSquares, size: PixelSize): Point {
  const middle = (n: number, px: number): number => Math.min(1, ((n + 0.5) * sidePx) / px);
  return [middle(square % across, size.width), middle(Math.floor(square / across), size.height)];
}

/** Where there is most of something: of the squares that come near to the most, the one in their midst. */
function midstOfMost(
  values: readonly number[],
  squares: readonly number[],
  across: number,
): number {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const near = [...values.keys()].filter((n) => values[n] >= high - nearTheMost * (high - low));
  const mean = (of: (square: number) => number): number =>
    near.reduce((sum, n) => sum + of(squares[n]), 0) / near.length;
  const column = (square: number): number => square % across;
  const row = (square: number): number => Math.floor(square / across);
  const [x, y] = [mean(column), mean(row)];
  const away = (n: number): number => Math.hypot(column(squares[n]) - x, row(squares[n]) - y);
  return near.reduce((best, n) => (away(n) < away(best) ? n : best));
}

/** Within the shapes of a run: where the second puddle belongs; and where its paint lies thickest and thinnest. */
function placesInRun(
  { own, other, squares, meets }: Run,
  { puddle }: Pick<Mix, 'puddle'>,
  across: number,
) {
  const total = own.map((amount, n) => amount + (other[n] ?? 0));
  const second = total.map((amount, n) => (other[n] ?? 0) / Math.max(1e-6, amount));
  const [most, thick, thin] = [second, total, total.map((amount) => -amount)].map((values) =>
    midstOfMost(values, squares, across),
  );
  return {
    second:
      meets?.puddle && second[most] >= secondFrom
        ? { square: squares[most], puddle: meets.puddle, amount: null }
        : null,
    shaded:
      total[thick] >= thickOverThin * total[thin]
        ? [
            { square: squares[thick], puddle, amount: 'strong' as const },
            { square: squares[thin], puddle, amount: 'thin' as const },
          ]
        : [],
  };
}

/**
 * Where to paint in a step and from which puddle: its shapes in their turn, where a second puddle runs in, where the
 * paint is strong and where thin; what would cover another tag is left out. From what the sheet is drawn from.
 */
export function washPlaces(step: Step, plan: Told, seen: Seen): WashPlace[] {
  if (!pointsAt(step)) return [];
  const places = shapesInTurn(step, seen, plan);
  const { squares } = seen;
  if (step.kind !== 'wash' || !squares) return places;
  const runs = (plan.runs ?? [])
    .filter(({ mix, squares: covered }) => step.mixes.includes(mix) && covered.length > 1)
    .sort((one, two) => two.squares.length - one.squares.length)
    .flatMap((run) => {
      const mix = plan.mixes.find(({ id }) => id === run.mix);
      return mix ? [placesInRun(run, mix, squares.across)] : [];
    });
  const inside = [
    ...runs.flatMap(({ second }) => second ?? []).slice(0, mostSecond),
    ...runs.slice(0, mostShaded).flatMap(({ shaded }) => shaded),
  ];
  for (const { square, puddle, amount } of inside) {
    const place = middleOf(square, squares, seen.raster);
    if (!isCovered(place, places)) places.push({ place, turn: null, puddle, amount });
  }
  return places;
}
