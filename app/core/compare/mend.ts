import { colourDifference } from '../colour/ciede2000.ts';
import type { Lab } from '../colour/lab.ts';
import { labOfReflectance } from '../colour/spectrum.ts';
import { largestAccentCm2 } from '../limits.ts';
import { bisect } from '../numeric/solve.ts';
import { loadForLightness, paperInside } from '../paint/colour-of-washes.ts';
import { type Consistency, consistencyOf, creamFrom } from '../paint/consistency.ts';
import { layOver, type MixSpectra, mixSpectra, paintLayer } from '../paint/layer.ts';
import type { Part } from '../paint/mix.ts';
import type { Paint } from '../paint/paint.ts';
import { type Mix, type Step, surfaceOf, type WashPlan } from '../plan/plan.ts';
import type { Mending } from './comparison.ts';

/** A layer that lies on a slot: paints, parts, and ml of tube paint on a square metre. */
export interface Laid {
  readonly parts: readonly Part[];
  readonly load: number;
}

/** What mends a shape, and what it would look like then. */
export interface Mended {
  readonly mending: Mending;
  readonly predicted: Lab;
  readonly parts?: readonly Part[];
  readonly load?: number;
  readonly consistency?: Consistency;
  readonly step?: number;
}

const paintsOf = (plan: WashPlan, parts: readonly Part[]): (readonly [Paint, number])[] =>
  parts.flatMap((part) => {
    const paint = plan.optics.find(({ id }) => id === part.paint);
    return paint ? [[paint, part.parts] as const] : [];
  });

export const spectraOf = (plan: WashPlan, parts: readonly Part[]): MixSpectra => {
  const known = paintsOf(plan, parts);
  return mixSpectra(
    known.map(([paint]) => paint),
    known.map(([, part]) => part),
  );
};

/** The mix a step lays on a slot, at the strength it has there; null where it lays none. */
export function laidBy(
  plan: WashPlan,
  { kind, slots, mixes }: Step,
  slot: number,
): (Laid & { readonly mix: Mix }) | null {
  const own = plan.slots[slot];
  if (kind !== 'wash' || !own || !slots.includes(slot)) return null;
  const mix = plan.mixes.find(
    ({ id, passage, family, parts }) =>
      mixes.includes(id) && passage === own.passage && family === own.family && parts.length > 0,
  );
  if (!mix) return null;
  const weaker = mix.weaker?.bands.includes(own.band) ? mix.weaker : null;
  return { mix, parts: mix.parts, load: (weaker ?? mix).load };
}

/** The washes that lie on a slot after a step. */
export const layersOn = (plan: WashPlan, slot: number, upTo: number): Laid[] =>
  plan.steps.flatMap((step) => (step.n <= upTo ? (laidBy(plan, step, slot) ?? []) : []));

/** The light of a slot's layers, each with so many times its paint. */
export function stacked(plan: WashPlan, layers: readonly Laid[], times: number): Float64Array {
  const sheet = paperInside(surfaceOf(plan));
  for (const { parts, load } of layers) {
    const { K, S } = spectraOf(plan, parts);
    layOver(paintLayer(K, S, load * times), sheet, sheet);
  }
  return sheet;
}

/** So many times the planned paint is the most that a shape is taken to hold. */
const mostTimes = 4;

/** How many times the planned paint lies there, by the lightness it has. */
export function timesFor(plan: WashPlan, layers: readonly Laid[], lightness: number): number {
  const surface = surfaceOf(plan);
  const darkerThan = (times: number): boolean =>
    labOfReflectance(stacked(plan, layers, times), surface)[0] > lightness;
  if (!darkerThan(0)) return 0;
  return bisect(darkerThan, 0, mostTimes, () => 1e-3)[1];
}

/**
 * How much paint stays when it is lifted from bone-dry paper, as a share, by how it stains: 0 lifts easily, 1 leaves
 * some, 2 stays (own).
 */
const staysLifted = [0.3, 0.6, 1] as const;

/** The share that stays of all paints in some layers: the paint that stains most decides; unknown counts as some. */
export function staysOf(plan: WashPlan, layers: readonly Laid[]): number {
  const stains = layers.flatMap(({ parts }) =>
    paintsOf(plan, parts).map(([{ properties }]) => staysLifted[properties.staining ?? 1]),
  );
  return Math.max(staysLifted[0], ...stains);
}

/** What is left when paint is lifted until a shape is as planned, or no more comes off. */
function lifted(
  plan: WashPlan,
  layers: readonly Laid[],
  times: number,
  stays: number,
  expected: Lab,
  measured: Lab,
): Lab {
  if (layers.length === 0) {
    const left = (c: 0 | 1 | 2): number => expected[c] + stays * (measured[c] - expected[c]);
    return [left(0), left(1), left(2)];
  }
  const surface = surfaceOf(plan);
  const planned = timesFor(plan, layers, expected[0]);
  const [l, a, b] = labOfReflectance(
    stacked(plan, layers, Math.max(planned, times * stays)),
    surface,
  );
  // A slot may run through several puddles: its hue is that of the expected sheet, the way to it that of its first.
  const [, ownA, ownB] = labOfReflectance(stacked(plan, layers, planned), surface);
  return [l, a + expected[1] - ownA, b + expected[2] - ownB];
}

/** Opaque white over anything, dry: a little under the paper (own). */
const opaqueWhite: Lab = [92, 0, 1];
/** The largest place that is set back in opaque white, mm2 (own): more looks chalky. */
const largestOpaqueMm2 = 100;

/** A mix of the family's own is taken before others that come only this much nearer, CIEDE2000 (own). */
const ownBefore = 1;

/** The glaze of the plan's mixes that brings a ground nearest to a colour. */
function bestGlaze(
  plan: WashPlan,
  slot: number,
  ground: Float64Array,
  wanted: Lab,
  areaCm2: number,
): Mended | null {
  const surface = surfaceOf(plan);
  const own = plan.slots[slot];
  const isLarge = areaCm2 > largestAccentCm2;
  let best: (Mended & { readonly cost: number }) | null = null;
  const seen = new Set<string>();
  for (const { parts, family, passage } of plan.mixes) {
    const key = JSON.stringify(parts);
    const isOwn = family === own?.family && passage === own.passage;
    if (parts.length === 0 || seen.has(`${key}${isOwn}`)) continue;
    seen.add(`${key}${isOwn}`);
    const spectra = spectraOf(plan, parts);
    const load = loadForLightness(spectra, ground, wanted[0], surface);
    if (load === null || (isLarge && load > creamFrom)) continue;
    const laid = layOver(
      paintLayer(spectra.K, spectra.S, load),
      ground,
      new Float64Array(ground.length),
    );
    const predicted = labOfReflectance(laid, surface);
    const cost = colourDifference(predicted, wanted) + (isOwn ? 0 : ownBefore);
    if (!best || cost < best.cost)
      best = { mending: 'glaze', predicted, parts, load, consistency: consistencyOf(load), cost };
  }
  return best;
}

/** The next wash on a slot, laid so that it ends as planned; null where there is none or it can't. */
function nextWash(
  plan: WashPlan,
  slot: number,
  upTo: number,
  ground: Float64Array,
  planned: Float64Array,
): Mended | null {
  const surface = surfaceOf(plan);
  for (const step of plan.steps) {
    const laid = step.n > upTo ? laidBy(plan, step, slot) : null;
    if (!laid) continue;
    const wanted = step.after[slot];
    if (!wanted) return null;
    const spectra = spectraOf(plan, laid.parts);
    const { K, S } = spectra;
    const seenOver = (below: Float64Array, ml: number): Lab => {
      const over = layOver(paintLayer(K, S, ml), below, new Float64Array(below.length));
      return labOfReflectance(over, surface);
    };
    // A slot may run through several puddles: what its own mix would come to is the measure, not the planned colour.
    const meant = seenOver(planned, laid.load);
    const load = loadForLightness(spectra, ground, meant[0], surface);
    if (load === null) return null;
    const comes = seenOver(ground, load);
    const off = (c: 0 | 1 | 2): number => wanted[c] + comes[c] - meant[c];
    return {
      mending: load > laid.load ? 'stronger-next' : 'weaker-next',
      predicted: [off(0), off(1), off(2)],
      parts: laid.parts,
      load,
      consistency: consistencyOf(load),
      step: step.n,
    };
  }
  return null;
}

/** A shape with so little of its paint has not been painted (own). */
const missingUnder = 0.15;

/**
 * What mends a slot that came out otherwise than planned after a step, by the optics the plan was made with: its own
 * layers, thinner or thicker, are the ground. Paint only darkens; what is too dark is lifted as far as its paints let
 * go, made up for by a weaker next wash, or set back in opaque white where it is small.
 */
export function mendShape(
  plan: WashPlan,
  upTo: number,
  slot: number,
  expected: Lab,
  measured: Lab,
  areaMm2: number,
): Mended {
  const layers = layersOn(plan, slot, upTo);
  const times = timesFor(plan, layers, measured[0]);
  const ground = stacked(plan, layers, times);
  const meant = stacked(plan, layers, timesFor(plan, layers, expected[0]));
  const areaCm2 = areaMm2 / 100;
  if (measured[0] > expected[0]) {
    const planned = timesFor(plan, layers, expected[0]);
    const isMissing = layers.length > 0 && times < missingUnder * planned;
    const glaze = bestGlaze(plan, slot, ground, expected, areaCm2);
    if (isMissing && glaze) return { ...glaze, mending: 'lay-missing' };
    return (
      nextWash(plan, slot, upTo, ground, meant) ??
      glaze ?? { mending: 'leave-as-is', predicted: measured }
    );
  }
  const later = nextWash(plan, slot, upTo, ground, meant);
  if (later) return later;
  const isWhite = layers.length === 0;
  if (isWhite && areaMm2 <= largestOpaqueMm2)
    return { mending: 'opaque-white', predicted: opaqueWhite };
  // What has run over a white may be any paint of the plan.
  const stays = staysOf(plan, isWhite ? plan.mixes : layers);
  if (stays < 1)
    return { mending: 'lift', predicted: lifted(plan, layers, times, stays, expected, measured) };
  if (areaMm2 <= largestOpaqueMm2) return { mending: 'opaque-white', predicted: opaqueWhite };
  return { mending: 'leave-as-is', predicted: measured };
}
