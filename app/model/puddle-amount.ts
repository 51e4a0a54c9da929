import { waterKindOf, waterOf } from './drying/water-of.ts';
import type { Mix, Part, Step, WashPlan } from './wash-plan.ts';

/** How much to mix of one puddle, roughly. */
export interface PuddleAmount {
  /** Water and paint together, ml: more than enough. */
  readonly ml: number;
  readonly waterMl: number;
  /** Of each paint, most first: ml, and cm of strip from a tube. */
  readonly paints: readonly { readonly paint: string; readonly ml: number; readonly cm: number }[];
}

/** Half as much again as is laid down: running out in a wash makes seams (common practice, no source). */
const moreThanEnough = 1.5;

/**
 * Share of paint in a puddle by load: the ladder from tea to butter with shares that teachers name, which differ
 * widely (common practice, no source); in between on a logarithmic scale. Rough.
 */
const shares: readonly (readonly [load: number, share: number])[] = [
  [0.35, 0.075],
  [1.2, 0.2],
  [3.5, 0.4],
  [10, 0.72],
  [24, 1],
];

function paintShare(load: number): number {
  const [least, most] = [shares[0], shares.at(-1)];
  if (!least || !most || load <= 0) return 0;
  if (load <= least[0]) return (least[1] * load) / least[0];
  for (const [i, [high, share]] of shares.entries()) {
    const [low, before] = shares[i - 1] ?? least;
    if (load > high || i === 0) continue;
    return before + ((share - before) * Math.log(load / low)) / Math.log(high / low);
  }
  return most[1];
}

/** Millilitres in 1 cm of strip from a tube with a 5 mm opening (own: a cylinder). */
const mlPerCm = 0.2;

/** What lies on the sheet of a wash, g/m2; into a wetted sheet goes no more than into a dry one: the rest is water. */
function gramsOf(step: Step): number {
  const kind = waterKindOf(step);
  const usual = kind === 'wetInWet' ? waterOf.wash : kind ? waterOf[kind] : 0;
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
const mlOf = (mm2: number, grams: number): number => (mm2 / 1e6) * grams * moreThanEnough;

/**
 * How much of one puddle some rows of it ask for (all of the same parts), each in the washes that paint it; null
 * where none does. Rough: water as reckoned for drying, half as much again, paint by the ladder of consistency.
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
      const [full, weak] = [mlOf(areas.full, grams), mlOf(areas.weak, grams)];
      ml += full + weak;
      paint += full * paintShare(mix.load) + weak * paintShare(mix.weaker?.load ?? 0);
    }
  }
  const parts = rows[0]?.parts ?? [];
  const all = partsOf(parts);
  if (ml <= 0 || all === 0) return null;
  return {
    ml,
    waterMl: ml - paint,
    paints: [...parts]
      .sort((one, other) => other.parts - one.parts)
      .map((part) => ({ paint: part.paint, ml: (paint * part.parts) / all }))
      .map((each) => ({ ...each, cm: each.ml / mlPerCm })),
  };
}
