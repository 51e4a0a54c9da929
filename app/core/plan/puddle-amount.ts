import { usualWaterGrams } from '../drying/water.ts';
import { butterFrom, consistencyOf } from '../paint/consistency.ts';
import type { Part } from '../paint/mix.ts';
import type { Mix, Step, WashPlan } from './plan.ts';
import { waterKindOf } from './water-kind.ts';

/** How much to mix of one puddle, roughly. */
interface PuddleAmount {
  /** Water and paint together, ml: more than enough. */
  readonly ml: number;
  readonly waterMl: number;
  /** Of each paint, most first: ml, and cm of strip from a tube. */
  readonly paints: readonly { readonly paint: string; readonly ml: number; readonly cm: number }[];
}

/**
 * Half as much again as is laid down: running out in a wash makes seams (common practice, no source). Thick paint can
 * be squeezed out as it runs short: a fifth more (own).
 */
const moreThanEnough = (load: number): number =>
  ['cream', 'butter'].includes(consistencyOf(load)) ? 1.2 : 1.5;

/**
 * Paint straight from the tube that a load of 1 puts on the sheet, g/m2. A load is paint by area, so twice the load
 * is twice the paint, however much water brings it there: where butter begins it is the paint alone,
 * 40 g/m2. With it a pea of paint, some 0.2 to 0.3 ml, makes a tablespoon of thin wash (common practice, no source;
 * own, rough).
 */
const paintGramsOfLoad = 40 / butterFrom;

/**
 * Half a teaspoon: less of a fluid puddle does not load a mop, ml (own). A fluid one has less paint than a
 * third.
 */
const smallestMl = 2.5;
const fluidShare = 1 / 3;

/** Millilitres in 1 cm of strip from a tube with a 5 mm opening (own: a cylinder). */
const mlPerCm = 0.2;

/** What lies on the sheet of a wash, g/m2; into a wetted sheet goes no more than into a dry one: the rest is water. */
function gramsOf(step: Step): number {
  const kind = waterKindOf(step);
  const usual = kind === 'wetInWet' ? usualWaterGrams.wash : kind ? usualWaterGrams[kind] : 0;
  return step.technique === 'wet-in-wet' ? usual : (step.waterGramsPerSquareMetre ?? usual);
}

interface SheetMm {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Area of the slots one row paints in a step, mm2: those of its bands that take it thinner, and the others. */
function areasOf({ slots }: WashPlan, step: Step, mix: Mix, sheet: SheetMm) {
  let [full, weak] = [0, 0];
  for (const i of step.slots) {
    const slot = slots[i];
    if (slot?.family !== mix.family || slot.passage !== mix.passage) continue;
    if (mix.weaker?.bands.includes(slot.band)) weak += slot.share;
    else full += slot.share;
  }
  const mm2 = sheet.widthMm * sheet.heightMm;
  return { full: full * mm2, weak: weak * mm2 };
}

const partsOf = (parts: readonly Part[]): number =>
  parts.reduce((sum, part) => sum + part.parts, 0);

/** 1 g of water is 1 ml; paint counts as water. */
const mlOf = (mm2: number, grams: number): number => (mm2 / 1e6) * grams;

/** Paint of a puddle as it is laid at one load, g/m2: never more than the puddle. */
const paintGrams = (load: number, grams: number): number =>
  Math.min(grams, load * paintGramsOfLoad);

/**
 * How much of one puddle some rows of it ask for (all of the same parts), each in the washes that paint it; null
 * where none does. Rough: water as reckoned for drying, paint by load, and more than enough of both.
 */
export function puddleAmount(
  plan: WashPlan,
  rows: readonly Mix[],
  sheet: SheetMm,
): PuddleAmount | null {
  let [ml, paint] = [0, 0];
  for (const step of plan.steps) {
    if (step.kind !== 'wash') continue;
    const grams = gramsOf(step);
    for (const mix of rows) {
      if (!step.mixes.includes(mix.id)) continue;
      const areas = areasOf(plan, step, mix, sheet);
      for (const [area, load] of [
        [areas.full, mix.load],
        [areas.weak, mix.weaker?.load ?? 0],
      ] as const) {
        const more = moreThanEnough(load);
        ml += more * mlOf(area, grams);
        paint += more * mlOf(area, paintGrams(load, grams));
      }
    }
  }
  const parts = rows[0]?.parts ?? [];
  const all = partsOf(parts);
  if (ml <= 0 || all === 0) return null;
  const more = paint / ml <= fluidShare ? Math.max(1, smallestMl / ml) : 1;
  ml *= more;
  paint *= more;
  return {
    ml,
    waterMl: ml - paint,
    paints: [...parts]
      .sort((one, other) => other.parts - one.parts)
      .map((part) => ({ paint: part.paint, ml: (paint * part.parts) / all }))
      .map((each) => ({ ...each, cm: each.ml / mlPerCm })),
  };
}

/** A teaspoon, ml, and drops in 1 ml (common practice, no source). */
const teaspoonMl = 5;
const dropsInMl = 20;

/** 'a few drops', '15 drops': by fives, under a quarter of a teaspoon. */
function drops(ml: number): string {
  const fives = 5 * Math.round((ml * dropsInMl) / 5);
  return fives < 10 ? 'a few drops' : `${fives} drops`;
}

function teaspoons(ml: number): string {
  const quarters = Math.round((ml / teaspoonMl) * 4);
  if (quarters < 4) return ['a quarter', 'half', 'three quarters'][quarters - 1] ?? '';
  const halves = Math.round(quarters / 2) / 2;
  return halves === 1 ? 'one' : String(halves);
}

/** 'one teaspoon', '2.5 teaspoons', '15 drops'. */
function waterInWords(ml: number): string {
  if (ml < 1) return drops(ml);
  const spoons = teaspoons(ml);
  if (/^(a quarter|half|three quarters)$/.test(spoons))
    return `${spoons === 'half' ? 'half a' : `${spoons} of a`} teaspoon`;
  return `${spoons} teaspoon${spoons === 'one' ? '' : 's'}`;
}

/** In half centimetres; in mm under one, so that three parts to one stay so; under a quarter it is a touch. */
function stripInWords(cm: number): string {
  if (cm < 0.25) return 'a touch';
  if (cm < 0.95) return `${Math.round(cm * 10)} mm`;
  const halves = Math.round(cm * 2) / 2;
  return `${cm < 4 ? halves : Math.round(cm)} cm`;
}

/** '7.5 ml' and so on: no more exact than it is. */
const mlInWords = (ml: number): string =>
  ml < 1 ? 'under 1 ml' : `${ml < 10 ? Math.round(ml * 2) / 2 : Math.round(ml)} ml`;

/**
 * 'About 10 ml: 2 teaspoons of water, 3 cm of ultramarine blue, a touch of burnt sienna.' Lengths are those of a
 * strip from the tube.
 */
export function amountInWords(
  { ml, waterMl, paints }: PuddleAmount,
  nameOf: (paint: string) => string,
): string {
  const strips = paints.map(({ paint, cm }) => `${stripInWords(cm)} of ${nameOf(paint)}`);
  const all = ml < 1 ? 'Under 1 ml' : `About ${mlInWords(ml)}`;
  return `${all}: ${waterInWords(waterMl)} of water, ${strips.join(', ')}.`;
}

/** The caveat shown once beside amounts. */
export const amountsAreRough =
  'Amounts are rough, and more than enough. Lengths are of paint from a tube; from a pan go by the swatch.';
