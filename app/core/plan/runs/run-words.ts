import { type Side, sideTowards } from '../../raster/size.ts';
import type { ColourName } from '../../words/plan/names.ts';
import type { Said } from '../../words/plan/words.ts';
import type { Run } from './run.ts';

/** A straight run over the squares: towards where it grows, and from what to what. */
interface Slope {
  readonly towards: Side;
  readonly low: number;
  readonly high: number;
  /** Share of the variance that it explains, 0..1. */
  readonly fit: number;
}

/** The plane through values of squares; null where there are too few of them. */
function slopeOf(
  values: readonly number[],
  squares: readonly number[],
  across: number,
): Slope | null {
  const n = values.length;
  if (n < 3) return null;
  const xs = squares.map((square) => square % across);
  const ys = squares.map((square) => Math.floor(square / across));
  const mean = (list: readonly number[]): number => list.reduce((all, each) => all + each, 0) / n;
  const [mx, my, mv] = [mean(xs), mean(ys), mean(values)];
  let [xx, xy, yy, xv, yv, vv] = [1e-9, 0, 1e-9, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const [x, y, v] = [xs[i] - mx, ys[i] - my, values[i] - mv];
    xx += x * x;
    xy += x * y;
    yy += y * y;
    xv += x * v;
    yv += y * v;
    vv += v * v;
  }
  const divisor = xx * yy - xy * xy;
  const gx = divisor > 1e-9 ? (xv * yy - yv * xy) / divisor : xv / xx;
  const gy = divisor > 1e-9 ? (yv * xx - xv * xy) / divisor : yv / yy;
  const along = xs.map((x, i) => gx * (x - mx) + gy * (ys[i] - my));
  return {
    towards: sideTowards(gx, gy),
    low: mv + Math.min(...along),
    high: mv + Math.max(...along),
    fit: vv > 0 ? Math.min(1, (gx * xv + gy * yv) / vv) : 0,
  };
}

/** A run is said in words from this part of what varies on (own) ... */
const saidFrom = 0.35;
/** ... and where it is this much stronger at one end (own) ... */
const stronger = 1.4;
/** ... or the second puddle has this much more of the paint there (own). */
const moreOfTheOther = 0.2;
/** A second puddle with less of the paint than this is not told of (own). */
const leastOfTheOther = 0.08;

/**
 * How a mix runs over its shapes, as it is told: where it is stronger, and from where the puddle or paint it meets
 * comes in. Null where nothing of it is worth a word.
 */
export function runTold(
  { squares, own, other, meets }: Run,
  across: number,
  colour: ColourName,
  paintName: (paint: string) => string,
): Said | null {
  const total = own.map((amount, i) => amount + (other[i] ?? 0));
  const strength = slopeOf(total, squares, across);
  const isStronger =
    strength &&
    strength.fit >= saidFrom &&
    strength.high >= stronger * Math.max(0.05, strength.low);
  const shares = other.map((amount, i) => amount / Math.max(1e-6, total[i]));
  const mean = shares.reduce((all, share) => all + share, 0) / shares.length;
  const isMet = meets !== undefined && mean >= leastOfTheOther;
  if (!isStronger && !isMet) return null;
  const slope = isMet ? slopeOf(shares, squares, across) : null;
  const fromSide = slope && slope.fit >= saidFrom && slope.high - slope.low >= moreOfTheOther;
  const from = fromSide ? slope.towards : null;
  return {
    say: 'mix/run',
    colour,
    ...(isStronger && { stronger: strength.towards }),
    ...(isMet && {
      meets: meets.puddle
        ? { puddle: meets.puddle, from }
        : { paint: paintName(meets.parts[0]?.paint ?? ''), from },
    }),
  };
}
