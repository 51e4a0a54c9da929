import type { Lab } from '../../app/core/colour/lab.ts';
import { labOfReflectance } from '../../app/core/colour/spectrum.ts';
import { paperInside } from '../../app/core/paint/colour-of-washes.ts';
import type { Paint } from '../../app/core/paint/paint.ts';
import { type Mix, surfaceOf, type WashPlan } from '../../app/core/plan/plan.ts';
import type { ColourSquares } from '../../app/core/reading/colour-squares.ts';
import type { Slot } from '../../app/core/reading/slot.ts';

/** How far a painter's hand is off, as shares: by so much at every mix, up or down, or normally with that deviation. */
export interface Hand {
  /** How much of the mix is laid. */
  readonly strength: number;
  /** Every paint of the mix against the others. */
  readonly ratio: number;
  readonly spread: 'up or down' | 'normal';
  /** How strong her tubes are beside the table's: deviation of the logarithm, once a paint and sheet; left out: 0. */
  readonly tubes?: number;
}

/** Mean 0, deviation 1: Box and Muller (1958), Ann. Math. Stat. 29, 610-611. */
const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

const spreads: Readonly<Record<Hand['spread'], (random: () => number) => number>> = {
  'up or down': (random) => (random() < 0.5 ? -1 : 1),
  normal,
};

/** A factor round 1, off by so much; never nothing at all. */
export const off = (random: () => number, by: number, { spread }: Hand): number =>
  Math.max(0.1, 1 + by * spreads[spread](random));

/**
 * Kubelka (1948) in its textbook hyperbolic form, band by band: a layer of optical depths K and S over a ground.
 * A second writing of its own: none of it is the app's.
 */
export function layered(k: number, s: number, ground: number): number {
  if (s < 1e-9) return Math.exp(-2 * k) * ground;
  const a = 1 + k / s;
  const b = Math.sqrt(a * a - 1);
  if (b * s > 300) return a - b; // as good as endlessly thick
  const [sinh, cosh] = b < 1e-9 ? [s, 1] : [Math.sinh(b * s) / b, Math.cosh(b * s)];
  const divisor = a * sinh + cosh;
  const back = sinh / divisor;
  const through = 1 / divisor;
  return back + (through * through * ground) / (1 - back * ground);
}

/** The same paints as her own tubes have them: each stronger or weaker. */
export const tubesOf = (
  paints: readonly Paint[],
  { tubes = 0 }: Hand,
  random: () => number,
): Paint[] =>
  paints.map((paint) => ({
    ...paint,
    strength: (paint.strength ?? 1) * (tubes > 0 ? Math.exp(tubes * normal(random)) : 1),
  }));

/** Total depths of a mix as her hand really mixed it, band by band. */
function mixedByHand(
  { parts, load = 1 }: Pick<Mix, 'parts'> & Partial<Pick<Mix, 'load'>>,
  paints: readonly Paint[],
  hand: Hand,
  random: () => number,
) {
  const amounts = parts.map((part) => part.parts * off(random, hand.ratio, hand));
  const sum = amounts.reduce((all, amount) => all + amount, 0);
  const strength = off(random, hand.strength, hand);
  const used = parts.map(({ paint }) => paints.find(({ id }) => id === paint) as Paint);
  const depth = (band: number, of: 'K' | 'S', at: number): number =>
    used.reduce((all, paint, n) => {
      const volume = (amounts[n] as number) / sum;
      return all + volume * (paint.strength ?? 1) * (paint[of][band] as number);
    }, 0) *
    at *
    strength;
  return { full: load, depth };
}

/**
 * A sheet painted by the plan's own steps, mixes and strengths, each mix off by chance as a hand is, once a wash.
 * Nothing is corrected on the way. The dry colour of every slot; whites stay paper.
 */
export function paintedByHand(plan: WashPlan, hand: Hand, random: () => number): Lab[] {
  const surface = surfaceOf(plan);
  const tubes = tubesOf(plan.optics, hand, random);
  const sheet = plan.slots.map(() => paperInside(surface));
  for (const step of plan.steps) {
    if (step.kind !== 'wash') continue;
    for (const id of step.mixes) {
      const mix = plan.mixes.find((each) => each.id === id) as Mix;
      const { full, depth } = mixedByHand(mix, tubes, hand, random);
      for (const i of step.slots) {
        const slot = plan.slots[i] as Slot;
        if (slot.passage !== mix.passage || slot.family !== mix.family) continue;
        const load = mix.weaker?.bands.includes(slot.band) ? mix.weaker.load : full;
        const reflectance = sheet[i] as Float64Array;
        for (let band = 0; band < reflectance.length; band++) {
          reflectance[band] = layered(
            depth(band, 'K', load),
            depth(band, 'S', load),
            reflectance[band] as number,
          );
        }
      }
    }
  }
  return sheet.map((reflectance) => labOfReflectance(reflectance, surface));
}

/** A row of the squares as it was painted: its slot, share of its square, dry colour, and the photo's colour there. */
interface PaintedRow {
  readonly slot: number;
  readonly share: number;
  readonly lab: Lab;
  readonly inPhoto: Lab;
}

/**
 * The same over the squares of the picture: every run as the plan has it, its own puddle and the one it meets each off
 * once a wash. Every `stride`th row of the squares is painted.
 */
export function paintedRows(
  plan: WashPlan,
  squares: ColourSquares,
  hand: Hand,
  random: () => number,
  stride = 1,
): PaintedRow[] {
  const surface = surfaceOf(plan);
  const tubes = tubesOf(plan.optics, hand, random);
  const rows = squares.slots.flatMap((slot, row) =>
    row % stride === 0 ? [{ row, slot, square: squares.squares[row] as number }] : [],
  );
  const light = rows.map(() => paperInside(surface));
  const left = [...(plan.runs ?? [])];
  for (const step of plan.steps) {
    if (step.kind !== 'wash') continue;
    for (const id of step.mixes) {
      const mix = plan.mixes.find((each) => each.id === id) as Mix;
      while (left[0]?.mix === id) {
        const run = left.shift() as NonNullable<typeof plan.runs>[number];
        const own = mixedByHand(mix, tubes, hand, random);
        const other = run.meets && mixedByHand(run.meets, tubes, hand, random);
        const place = new Map(run.squares.map((square, n) => [square, n]));
        const depths = (of: 'K' | 'S'): Depths =>
          Array.from({ length: 36 }, (_, band) => ({
            own: own.depth(band, of, 1),
            other: other?.depth(band, of, 1) ?? 0,
          }));
        const [k, s] = [depths('K'), depths('S')];
        for (const [n, { slot: i, square }] of rows.entries()) {
          const slot = plan.slots[i] as Slot;
          const isThin = mix.weaker?.bands.includes(slot.band) ?? false;
          const at = place.get(square);
          if (at === undefined || isThin !== (run.strength === 'weaker')) continue;
          if (slot.passage !== mix.passage || slot.family !== mix.family) continue;
          if (!step.slots.includes(i)) continue;
          layRow(light[n] as Float64Array, k, s, run.own[at] as number, run.other[at] ?? 0);
        }
      }
    }
  }
  return rows.map(({ row, slot }, n) => ({
    slot,
    share: squares.shares[row] as number,
    lab: labOfReflectance(light[n] as Float64Array, surface),
    inPhoto: squares.colours.slice(3 * row, 3 * row + 3) as unknown as Lab,
  }));
}

/** Depths by ml/m2, band by band, of a puddle and of the one it meets. */
type Depths = readonly { readonly own: number; readonly other: number }[];

function layRow(light: Float64Array, k: Depths, s: Depths, own: number, other: number): void {
  for (let band = 0; band < light.length; band++) {
    const [absorbs, scatters] = [k[band], s[band]] as [Depths[number], Depths[number]];
    light[band] = layered(
      own * absorbs.own + other * absorbs.other,
      own * scatters.own + other * scatters.other,
      light[band] as number,
    );
  }
}

/** Dry colour of every slot, the mean over its rows. */
export function meanOfSlots(plan: WashPlan, rows: readonly PaintedRow[]): Lab[] {
  const sums = plan.slots.map(() => [0, 0, 0, 0]);
  for (const { slot, share, lab } of rows) {
    const sum = sums[slot] as number[];
    for (const [c, value] of [...lab, 1].entries()) sum[c] = (sum[c] as number) + share * value;
  }
  return sums.map(
    ([l = 0, a = 0, b = 0, share = 0]): Lab =>
      share > 0 ? [l / share, a / share, b / share] : plan.paper,
  );
}
