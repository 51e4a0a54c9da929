import type { Lab } from '../../app/core/colour/lab.ts';
import { labOfReflectance } from '../../app/core/colour/spectrum.ts';
import { paperInside } from '../../app/core/paint/colour-of-washes.ts';
import type { Paint } from '../../app/core/paint/paint.ts';
import { type Mix, surfaceOf, type WashPlan } from '../../app/core/plan/plan.ts';
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
const off = (random: () => number, by: number, { spread }: Hand): number =>
  Math.max(0.1, 1 + by * spreads[spread](random));

/**
 * Kubelka (1948) in its textbook hyperbolic form, band by band: a layer of optical depths K and S over a ground.
 * A second writing of its own: none of it is the app's.
 */
function layered(k: number, s: number, ground: number): number {
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
const tubesOf = (paints: readonly Paint[], { tubes = 0 }: Hand, random: () => number): Paint[] =>
  paints.map((paint) => ({
    ...paint,
    strength: (paint.strength ?? 1) * (tubes > 0 ? Math.exp(tubes * normal(random)) : 1),
  }));

/** Total depths of a mix as her hand really mixed it, band by band. */
function mixedByHand(
  { parts, load }: Mix,
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
