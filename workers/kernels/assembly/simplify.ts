// AssemblyScript (app/build/assembly.mjs): the pixel loops of app/core/raster/simplify.ts and gaussian-blur.ts, four rows
// in the lanes of a vector. Sums are of 64 bits, in the order of the plain loops: both come out alike to the last bit.
// A plane lies row by row, its rows padded to whole fours, and so are their number and all strides, which are bytes.

/** Bytes of four floats: a vector, or one column of four rows. */
const vector: usize = 16;

function lowOf(four: v128): v128 {
  return f64x2.promote_low_f32x4(four);
}

function highOf(four: v128): v128 {
  return f64x2.promote_low_f32x4(i32x4.shuffle(four, four, 2, 3, 2, 3));
}

function floatsOf(low: v128, high: v128): v128 {
  return i64x2.shuffle(f32x4.demote_f64x2_zero(low), f32x4.demote_f64x2_zero(high), 0, 2);
}

/** Writes four vectors turned: the first numbers of all of them, the second ones, and so on, `step` apart. */
function storeTurned(a: v128, b: v128, c: v128, d: v128, to: usize, step: usize): void {
  const abLow = i32x4.shuffle(a, b, 0, 4, 1, 5);
  const abHigh = i32x4.shuffle(a, b, 2, 6, 3, 7);
  const cdLow = i32x4.shuffle(c, d, 0, 4, 1, 5);
  const cdHigh = i32x4.shuffle(c, d, 2, 6, 3, 7);
  v128.store(to, i64x2.shuffle(abLow, cdLow, 0, 2));
  v128.store(to + step, i64x2.shuffle(abLow, cdLow, 1, 3));
  v128.store(to + 2 * step, i64x2.shuffle(abHigh, cdHigh, 0, 2));
  v128.store(to + 3 * step, i64x2.shuffle(abHigh, cdHigh, 1, 3));
}

/** Writes the first `count` columns of four rows `stride` bytes apart to `to` as one row of columns, in whole fours. */
function turnFour(from: usize, stride: usize, count: i32, to: usize): void {
  for (let at = from; at < from + 4 * <usize>count; at += vector, to += 4 * vector) {
    const a = v128.load(at);
    const b = v128.load(at + stride);
    const c = v128.load(at + 2 * stride);
    const d = v128.load(at + 3 * stride);
    storeTurned(a, b, c, d, to, vector);
  }
}

/** One pass of an extended box over `count` columns of four rows. */
function boxPass(
  from: usize,
  to: usize,
  step: usize,
  count: i32,
  radius: i32,
  end: f64,
  weight: f64,
): void {
  const last = count - 1;
  const ends = f64x2.splat(end);
  let low = f64x2.splat(0);
  let high = f64x2.splat(0);
  for (let i = -radius; i <= radius; i++) {
    const four = v128.load(from + vector * <usize>min(max(i, 0), last));
    low = f64x2.add(low, lowOf(four));
    high = f64x2.add(high, highOf(four));
  }
  for (let i = 0; i < count; i++, to += step) {
    const before = v128.load(from + vector * <usize>max(i - radius - 1, 0));
    const after = v128.load(from + vector * <usize>min(i + radius + 1, last));
    const leaving = v128.load(from + vector * <usize>max(i - radius, 0));
    const lowEnds = f64x2.mul(ends, f64x2.add(lowOf(before), lowOf(after)));
    const highEnds = f64x2.mul(ends, f64x2.add(highOf(before), highOf(after)));
    const blurredLow = f64x2.mul(f64x2.splat(weight), f64x2.add(low, lowEnds));
    const blurredHigh = f64x2.mul(f64x2.splat(weight), f64x2.add(high, highEnds));
    v128.store(to, floatsOf(blurredLow, blurredHigh));
    low = f64x2.add(low, f64x2.sub(lowOf(after), lowOf(leaving)));
    high = f64x2.add(high, f64x2.sub(highOf(after), highOf(leaving)));
  }
}

/** Blurs four rows by three boxes and writes them as columns; `spare` has room for two of them in whole fours. */
export function blurFour(
  from: usize,
  stride: usize,
  count: i32,
  to: usize,
  step: usize,
  radius: i32,
  end: f64,
  weight: f64,
  spare: usize,
): void {
  const other = spare + vector * <usize>((count + 3) & ~3);
  turnFour(from, stride, count, spare);
  boxPass(spare, other, vector, count, radius, end, weight);
  boxPass(other, spare, vector, count, radius, end, weight);
  boxPass(spare, to, step, count, radius, end, weight);
}

/** Straight between entries of a table: `one` and `two` hold the entry of a lane and the next one. */
function between(place: v128, entry: v128, one: v128, two: v128): v128 {
  const low = i64x2.shuffle(one, two, 0, 2);
  const next = i64x2.shuffle(one, two, 1, 3);
  const part = f64x2.sub(place, f64x2.convert_low_i32x4_s(entry));
  return f64x2.add(low, f64x2.mul(part, f64x2.sub(next, low)));
}

/** The curve of CIE Lab by its table of floats. */
function curveOf(t: v128, steps: f64, table: usize): v128 {
  const place = f64x2.mul(t, f64x2.splat(steps));
  const entry = i32x4.trunc_sat_f64x2_s_zero(place);
  const one = v128.load64_zero(table + 4 * <usize>i32x4.extract_lane(entry, 0));
  const two = v128.load64_zero(table + 4 * <usize>i32x4.extract_lane(entry, 1));
  return between(place, entry, lowOf(one), lowOf(two));
}

/** What three channels are together by their shares, which lie at `shares`. */
function mixed(shares: usize, r: v128, g: v128, b: v128): v128 {
  const red = f64x2.mul(v128.load64_splat(shares), r);
  const green = f64x2.mul(v128.load64_splat(shares, 8), g);
  const blue = f64x2.mul(v128.load64_splat(shares, 16), b);
  return f64x2.add(f64x2.add(red, green), blue);
}

/** Turns linear light into L*, a*, b* in place; `shares` of the channels in X, Y, Z are nine doubles. */
export function labOf(
  red: usize,
  green: usize,
  blue: usize,
  bytes: usize,
  shares: usize,
  steps: f64,
  table: usize,
): void {
  for (let i: usize = 0; i < bytes; i += 8) {
    const r = lowOf(v128.load64_zero(red + i));
    const g = lowOf(v128.load64_zero(green + i));
    const b = lowOf(v128.load64_zero(blue + i));
    const x = curveOf(mixed(shares, r, g, b), steps, table);
    const y = curveOf(mixed(shares + 24, r, g, b), steps, table);
    const z = curveOf(mixed(shares + 48, r, g, b), steps, table);
    const lightness = f64x2.sub(f64x2.mul(f64x2.splat(116), y), f64x2.splat(16));
    const along = f64x2.mul(f64x2.splat(500), f64x2.sub(x, y));
    const across = f64x2.mul(f64x2.splat(200), f64x2.sub(y, z));
    v128.store64_lane(red + i, f32x4.demote_f64x2_zero(lightness), 0);
    v128.store64_lane(green + i, f32x4.demote_f64x2_zero(along), 0);
    v128.store64_lane(blue + i, f32x4.demote_f64x2_zero(across), 0);
  }
}

/** Differences of two pixels from those `back` bytes before them. */
function differences(at: usize, back: usize): v128 {
  const before = lowOf(v128.load64_zero(at - back));
  return f64x2.abs(f64x2.sub(lowOf(v128.load64_zero(at)), before));
}

/** The same summed up over up to three planes, 0 where there is none. */
function crossed(one: usize, two: usize, three: usize, at: usize, back: usize): v128 {
  let sum = differences(one + at, back);
  if (two) sum = f64x2.add(sum, differences(two + at, back));
  return three ? f64x2.add(sum, differences(three + at, back)) : sum;
}

/** Weights of two steps by the difference crossed: a table of `entries` doubles, and nothing beyond. */
function weightsOf(difference: v128, perDifference: f64, entries: f64, table: usize): v128 {
  const place = f64x2.min(f64x2.mul(difference, f64x2.splat(perDifference)), f64x2.splat(entries));
  const entry = i32x4.trunc_sat_f64x2_s_zero(place);
  const one = v128.load(table + 8 * <usize>i32x4.extract_lane(entry, 0));
  const two = v128.load(table + 8 * <usize>i32x4.extract_lane(entry, 1));
  return between(place, entry, one, two);
}

/** Weights left after the steps to four pixels, `at` bytes into the planes, from those `back` bytes before them. */
function weigh(
  at: usize,
  back: usize,
  one: usize,
  two: usize,
  three: usize,
  perDifference: f64,
  entries: f64,
  table: usize,
): v128 {
  return floatsOf(
    weightsOf(crossed(one, two, three, at, back), perDifference, entries, table),
    weightsOf(crossed(one, two, three, at + 8, back), perDifference, entries, table),
  );
}

/** The weights of a row's steps from left to right. */
export function weighAcross(
  from: usize,
  stride: usize,
  one: usize,
  two: usize,
  three: usize,
  perDifference: f64,
  entries: f64,
  table: usize,
  kept: usize,
): void {
  for (let at = from; at < from + stride; at += vector) {
    v128.store(kept + at, weigh(at, 4, one, two, three, perDifference, entries, table));
  }
}

/** The weights of the steps to four rows from the rows above, written as columns. */
export function weighDown(
  from: usize,
  stride: usize,
  one: usize,
  two: usize,
  three: usize,
  perDifference: f64,
  entries: f64,
  table: usize,
  kept: usize,
  step: usize,
): void {
  for (let at = from; at < from + stride; at += vector, kept += 4 * step) {
    const a = weigh(at, stride, one, two, three, perDifference, entries, table);
    const b = weigh(at + stride, stride, one, two, three, perDifference, entries, table);
    const c = weigh(at + 2 * stride, stride, one, two, three, perDifference, entries, table);
    const d = weigh(at + 3 * stride, stride, one, two, three, perDifference, entries, table);
    storeTurned(a, b, c, d, kept, step);
  }
}

/**
 * For `smoothFour`: the weights of four rows, squared so many times, as columns at `turned`, and what all pixels of a
 * row weigh together as seen from each, two vectors of doubles a column.
 */
export function weighFour(
  kept: usize,
  squarings: i32,
  stride: usize,
  count: i32,
  turned: usize,
  totals: usize,
): void {
  turnFour(kept, stride, count, turned);
  const end = turned + vector * <usize>count;
  const unit = f64x2.splat(1);
  let low = f64x2.splat(0);
  let high = low;
  for (let at = turned; at < end; at += vector, totals += 2 * vector) {
    let k = v128.load(at);
    for (let n = 0; n < squarings; n++) k = f32x4.mul(k, k);
    v128.store(at, k);
    low = f64x2.add(f64x2.mul(lowOf(k), low), unit);
    high = f64x2.add(f64x2.mul(highOf(k), high), unit);
    v128.store(totals, low);
    v128.store(totals, high, vector);
  }
  low = high = f64x2.splat(0);
  for (let at = end; at > turned; ) {
    at -= vector;
    totals -= 2 * vector;
    const k = v128.load(at);
    v128.store(totals, f64x2.add(v128.load(totals), low));
    v128.store(totals, f64x2.add(v128.load(totals, vector), high), vector);
    low = f64x2.mul(lowOf(k), f64x2.add(low, unit));
    high = f64x2.mul(highOf(k), f64x2.add(high, unit));
  }
}

/** Smooths four rows by weights as `weighFour` writes them, and writes them as columns. `spare`: twelve rows. */
export function smoothFour(
  plane: usize,
  stride: usize,
  count: i32,
  turnedKept: usize,
  totals: usize,
  to: usize,
  step: usize,
  spare: usize,
): void {
  const length = vector * <usize>count;
  const sums = spare + 4 * stride;
  turnFour(plane, stride, count, spare);
  let low = f64x2.splat(0);
  let high = f64x2.splat(0);
  for (let at: usize = 0; at < length; at += vector) {
    const k = v128.load(turnedKept + at);
    const four = v128.load(spare + at);
    low = f64x2.add(f64x2.mul(lowOf(k), low), lowOf(four));
    high = f64x2.add(f64x2.mul(highOf(k), high), highOf(four));
    v128.store(sums + 2 * at, low);
    v128.store(sums + 2 * at, high, vector);
  }
  low = high = f64x2.splat(0);
  to += step * <usize>count;
  for (let at = length; at > 0; ) {
    at -= vector;
    to -= step;
    const k = v128.load(turnedKept + at);
    const four = v128.load(spare + at);
    const lowMean = f64x2.div(f64x2.add(v128.load(sums + 2 * at), low), v128.load(totals + 2 * at));
    const highSum = f64x2.add(v128.load(sums + 2 * at, vector), high);
    const highMean = f64x2.div(highSum, v128.load(totals + 2 * at, vector));
    v128.store(to, floatsOf(lowMean, highMean));
    low = f64x2.mul(lowOf(k), f64x2.add(low, lowOf(four)));
    high = f64x2.mul(highOf(k), f64x2.add(high, highOf(four)));
  }
}
