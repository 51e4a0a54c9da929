import { dropsInMl, tablespoonMl, teaspoonMl } from '../limits.ts';
import { concentrationOf, consistencyOf, usualLoad } from '../paint/consistency.ts';
import { missOf } from '../paint/thinning.ts';
import type { Mix, Step, WashPlan } from './plan.ts';

/** How much to mix of one puddle, as it is told: measured out so, it has the colour the plan shows. */
export interface PuddleAmount {
  /** Water and paint together, ml: more than enough. */
  readonly ml: number;
  readonly waterMl: number;
  /** ml of paint to 1 ml of water; Infinity without water. */
  readonly concentration: number;
  /** Of each paint, most first: ml, and mm of strip from a tube. */
  readonly paints: readonly { readonly paint: string; readonly ml: number; readonly mm: number }[];
}

const isThick = (load: number): boolean => ['cream', 'butter'].includes(consistencyOf(load));

/**
 * Half as much again as is laid down: running out in a wash makes seams (common practice, no source). Thick paint can
 * be squeezed out as it runs short: a fifth more (own).
 */
const moreThanEnough = (load: number): number => (isThick(load) ? 1.2 : 1.5);

/** Half a teaspoon: less of a fluid puddle does not load a mop, ml (own). */
const smallestMl = 2.5;

/** Millilitres in 1 mm of strip from a tube with a 5 mm opening (own: a cylinder). */
const mlPerMm = 0.02;

interface SheetMm {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Area of the slots one row paints in a step, m2: those of its bands that take it thinner, and the others. */
function areasOf({ slots }: WashPlan, step: Step, mix: Mix, sheet: SheetMm) {
  let [full, weak] = [0, 0];
  for (const i of step.slots) {
    const slot = slots[i];
    if (slot?.family !== mix.family || slot.passage !== mix.passage) continue;
    if (mix.weaker?.bands.includes(slot.band)) weak += slot.share;
    else full += slot.share;
  }
  const m2 = (sheet.widthMm / 1000) * (sheet.heightMm / 1000);
  return { full: full * m2, weak: weak * m2 };
}

/** Tube paint that some rows ask for, ml, more than enough; and the strongest load any of it is laid at. */
function paintAskedFor(plan: WashPlan, rows: readonly Mix[], sheet: SheetMm) {
  let [ml, strongest] = [0, 0];
  for (const step of plan.steps) {
    if (step.kind !== 'wash') continue;
    for (const mix of rows) {
      if (!step.mixes.includes(mix.id)) continue;
      const { full, weak } = areasOf(plan, step, mix, sheet);
      for (const [area, load] of [
        [full, mix.load],
        [weak, mix.weaker?.load ?? 0],
      ] as const) {
        if (area <= 0) continue;
        ml += moreThanEnough(load) * area * load;
        strongest = Math.max(strongest, load);
      }
    }
  }
  return { ml, strongest };
}

/** What is measured out, ml: up to where, and in what steps: drops, parts of a teaspoon, quarters of a tablespoon. */
const measures = [
  { below: teaspoonMl / 4, step: 1 / dropsInMl },
  { below: tablespoonMl, step: teaspoonMl / 4 },
  { below: 2 * tablespoonMl, step: teaspoonMl / 2 },
] as const;

/** The nearest amount of water that drops or spoons measure, ml. */
function measurableWater(ml: number): number {
  const step = measures.find(({ below }) => ml < below)?.step ?? tablespoonMl / 4;
  return Math.round(ml / step) * step;
}

/** Strips of one part that can be measured, mm, from the least that is enough: whole ones to 5, then half centimetres. */
function stripsFrom(least: number, count: number): number[] {
  const strips: number[] = [];
  for (let mm = 1; strips.length < count; mm += mm < 5 ? 1 : 5) {
    if (mm >= least - 1e-9) strips.push(mm);
  }
  return strips;
}

/** Strips that are tried for one whose water comes out even; twice the paint is worth 3 % of the load (own). */
const stripsTried = 4;
const missWorthTwice = 0.03;

/** Where even 1 mm a part is so many times enough, it is mixed as coffee at least and thinned: tea would fill a cup (own). */
const littleTimes = 3;

/**
 * How much of one puddle some rows of it ask for (all of the same parts), each in the washes that paint it; null
 * where none does. Mixed for the strongest of them. One part is a strip that can be measured, so that the parts come
 * out exactly; water is what drops or spoons measure, and among the strips that are enough that one is told whose
 * water errs least.
 */
export function puddleAmount(
  plan: WashPlan,
  rows: readonly Mix[],
  sheet: SheetMm,
): PuddleAmount | null {
  const parts = [...(rows[0]?.parts ?? [])].sort((one, other) => other.parts - one.parts);
  const sum = parts.reduce((all, part) => all + part.parts, 0);
  const { ml: asked, strongest } = paintAskedFor(plan, rows, sheet);
  if (asked <= 0 || sum === 0) return null;
  const isLittle = sum * mlPerMm > littleTimes * asked;
  const mixedFor = isLittle ? Math.max(strongest, usualLoad('coffee')) : strongest;
  const wanted = concentrationOf(mixedFor);
  const least = isThick(mixedFor) ? 0 : smallestMl / (1 + 1 / wanted);
  const choices = stripsFrom(Math.max(asked, least) / mlPerMm / sum, stripsTried).map((strip) => {
    const paint = strip * mlPerMm * sum;
    const waterMl = measurableWater(paint / wanted);
    const concentration = paint / waterMl;
    const cost = missOf(concentration, mixedFor) + missWorthTwice * Math.log2(strip);
    return { strip, paint, waterMl, concentration, cost };
  });
  const { strip, paint, waterMl, concentration } = choices.reduce((best, each) =>
    each.cost < best.cost ? each : best,
  );
  return {
    ml: paint + waterMl,
    waterMl,
    concentration,
    paints: parts.map((part) => ({
      paint: part.paint,
      ml: part.parts * strip * mlPerMm,
      mm: part.parts * strip,
    })),
  };
}
