import type { Mix } from '../../../app/model/wash-plan.ts';
import { type PlanFacts, paintsIn } from './plan-facts.ts';
import { isTextured } from './textured-slot.ts';

/** The rows a slot was painted with, first wash first. */
export function rowsOver({ passages, slots }: PlanFacts, index: number): Mix[] {
  const slot = slots[index];
  return passages
    .flatMap((passage) => passage.washes)
    .filter((wash) => wash.slots.includes(index))
    .flatMap((wash) => wash.mixes)
    .filter((mix) => mix.passage === slot?.passage && mix.family === slot?.family);
}

/** A soft border shorter than this needs no lifting, mm on the sheet (own figure). */
const softMm = 40;

/**
 * Where lifting helps: shapes that run softly into a clearly lighter one over some length, if every paint
 * in them lifts easily (R11: staining paint stays).
 */
export function placesToLift(facts: PlanFacts): number[] {
  const { reading, slots } = facts;
  const places = new Set<number>();
  for (const { a, b, lengthMm, contrast, soft } of reading.borders) {
    if (soft < 0.6 || contrast < 10 || lengthMm * soft < softMm) continue;
    const one = slots[a];
    const two = slots[b];
    if (!one || !two) continue;
    const darker = one.target[0] < two.target[0] ? a : b;
    const paints = paintsIn(facts, rowsOver(facts, darker));
    if (paints.length > 0 && paints.every((paint) => paint.properties.staining === 0)) {
      places.add(darker);
    }
  }
  return [...places].sort((x, y) => x - y);
}

/** Where splatter helps: slots of many small shapes with no large plain one, darker than the first wash. */
export function placesToSplatter(facts: PlanFacts): number[] {
  const { reading, slots } = facts;
  const sheetMm2 = reading.sheet.widthMm * reading.sheet.heightMm;
  return [...slots.keys()].filter((i) => {
    const slot = slots[i];
    if (!slot || slot.reserve || rowsOver(facts, i).length < 2) return false;
    return isTextured(slot, sheetMm2);
  });
}

/** The slots of the darkest painted band of the sheet. */
export function darkestSlots({ slots }: PlanFacts): number[] {
  const painted = [...slots.keys()].filter((i) => slots[i] && !slots[i]?.reserve);
  const darkest = painted.reduce((most, i) => Math.max(most, slots[i]?.band ?? 0), 0);
  return painted.filter((i) => slots[i]?.band === darkest);
}
