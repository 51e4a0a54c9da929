import { lightnessOfOneValue } from '../../limits.ts';
import type { Paint } from '../../paint/paint.ts';
import type { Slot } from '../../reading/slot.ts';
import { paintsWithoutDust } from '../../words/cautions.ts';
import type { Mix } from '../plan.ts';
import { type PlanFacts, paintsIn, usedMixes } from '../plan-facts.ts';
import {
  dryingMinutes,
  markMinutes,
  minutesOnSheet,
  quietStep,
  type StepDraft,
} from './step-draft.ts';

/** Broken up enough that spots and dry strokes look at home (own). */
const textured = { small: 40, share: 0.6, largest: 0.1 } as const;

/** Many small shapes and no large plain one. */
export const isTextured = (
  { smallShapes, shapes, largestMm2 }: Pick<Slot, 'smallShapes' | 'shapes' | 'largestMm2'>,
  sheetMm2: number,
): boolean =>
  smallShapes >= textured.small &&
  smallShapes >= textured.share * shapes &&
  largestMm2 < textured.largest * sheetMm2;

/** The mixes that were laid on a slot, in the order of the washes. */
export function mixesOverSlot({ passages, slots }: PlanFacts, index: number): Mix[] {
  const slot = slots[index];
  return passages
    .flatMap((passage) => passage.washes)
    .filter((wash) => wash.slots.includes(index))
    .flatMap((wash) => wash.mixes)
    .filter((mix) => mix.passage === slot?.passage && mix.family === slot?.family);
}

/** A soft border shorter than this needs no lifting, mm on the sheet (own). */
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
    const paints = paintsIn(facts, mixesOverSlot(facts, darker));
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
    if (!slot || slot.reserve || mixesOverSlot(facts, i).length < 2) return false;
    return isTextured(slot, sheetMm2);
  });
}

/** The slots of the darkest painted band of the sheet. */
export function darkestSlots({ slots }: PlanFacts): number[] {
  const painted = [...slots.keys()].filter((i) => slots[i] && !slots[i]?.reserve);
  const darkest = painted.reduce((most, i) => Math.max(most, slots[i]?.band ?? 0), 0);
  return painted.filter((i) => slots[i]?.band === darkest);
}

const familiesOf = (facts: PlanFacts, indices: readonly number[]): number[] =>
  [...new Set(indices.flatMap((i) => facts.slots[i]?.family ?? []))].sort((a, b) => a - b);

/** Soft lights beside paints that lift easily: taken out rather than kept. */
export const liftStep = (facts: PlanFacts, slots: readonly number[]): StepDraft => ({
  ...quietStep,
  key: 'lift/sheet/0',
  kind: 'lift',
  title: { say: 'title/lift' },
  prompt: { say: 'lift/blot' },
  watch: [{ say: 'lift/stop-early' }],
  slots,
  families: familiesOf(facts, slots),
  technique: 'lifting',
  paintMinutes: minutesOnSheet(facts, [2, 6]),
  ...dryingMinutes(facts, 'lift'),
  rules: ['R11', 'R17'],
});

/** The last mix laid on each of some slots, every mix once. */
export const lastRows = (facts: PlanFacts, slots: readonly number[]): Mix[] => [
  ...new Set(slots.flatMap((i) => mixesOverSlot(facts, i).at(-1) ?? [])),
];

const flicked = {
  title: { say: 'title/splatter' },
  prompt: { say: 'splatter/tap' },
  technique: 'splatter',
} as const;

/** The same look without a spray. */
const dabbed = (noDust: readonly Paint[]) =>
  ({
    title: { say: 'title/specks' },
    prompt: { say: 'splatter/specks', noDust: noDust.map(({ name }) => name) },
    technique: 'wet on dry',
  }) as const;

/**
 * Texture where the picture is broken up anyway, never in plain areas (R21). Only paints that may fly are flicked:
 * where the puddles hold none, the spots are set with a brush.
 */
export function splatterStep(facts: PlanFacts, broken: readonly number[]): StepDraft {
  const heldBack = (slots: readonly number[]): Paint[] =>
    paintsWithoutDust(paintsIn(facts, lastRows(facts, slots)));
  const free = broken.filter((i) => heldBack([i]).length === 0);
  const slots = free.length > 0 ? free : broken;
  const noDust = heldBack(slots);
  return {
    ...quietStep,
    ...(noDust.length > 0 ? dabbed(noDust) : flicked),
    key: 'splatter/sheet/0',
    kind: 'splatter',
    watch: [{ say: 'splatter/few' }],
    slots,
    families: familiesOf(facts, slots),
    mixes: usedMixes(lastRows(facts, slots)),
    paintMinutes: minutesOnSheet(facts, [2, 5]),
    ...dryingMinutes(facts, 'splatter'),
    rules: ['R13', 'R21'],
  };
}

/** A few touches need no more puddles than these (own). */
export const mostAccentPuddles = 2;

/** Mixes within one value (10 L*) of the darkest count as dark; a lighter mix makes no accent. */
const darkRows = (mixes: readonly Mix[]): Mix[] => {
  const painted = mixes
    .filter(({ parts }) => parts.length > 0)
    .sort((one, other) => one.expected[0] - other.expected[0]);
  const limit = (painted[0]?.expected[0] ?? 0) + lightnessOfOneValue;
  return painted.filter(({ expected }) => expected[0] <= limit).slice(0, mostAccentPuddles);
};

/** The smallest, darkest touches. */
export const accentsStep = (
  facts: PlanFacts,
  slots: readonly number[],
  mixes: readonly Mix[],
): StepDraft => ({
  ...quietStep,
  key: 'accents/sheet/0',
  kind: 'accents',
  title: { say: 'title/accents' },
  prompt: { say: 'accents/plain' },
  watch: [{ say: 'accents/fewer' }],
  bands: [...new Set(slots.flatMap((i) => facts.slots[i]?.band ?? []))].sort((a, b) => a - b),
  slots,
  families: familiesOf(facts, slots),
  mixes: usedMixes(darkRows(mixes)),
  technique: 'dry brush',
  paintMinutes: markMinutes(facts, 40),
  ...dryingMinutes(facts, 'accents'),
  rules: ['R3', 'R4'],
});

/** A plan sets about so many of the small shapes a reading finds (own). */
const usualDetails = 40;

/** Small shapes that the washes could not hold; which, and from which puddles, is chosen once the washes have run. */
export const detailsStep = (facts: PlanFacts, count: number): StepDraft => ({
  ...quietStep,
  key: 'details/sheet/0',
  kind: 'details',
  title: { say: 'title/details' },
  prompt: { say: 'details/plain' },
  watch: [{ say: 'details/leave-out' }],
  slots: [...facts.slots.keys()],
  technique: 'wet on dry',
  paintMinutes: markMinutes(facts, Math.min(usualDetails, count)),
  ...dryingMinutes(facts, 'details'),
  rules: ['R3', 'R4'],
});

export const lastLookStep = (facts: PlanFacts): StepDraft => ({
  ...quietStep,
  key: 'last-look/sheet/0',
  kind: 'last-look',
  title: { say: 'title/last-look' },
  prompt: { say: 'last-look/squint' },
  slots: [...facts.slots.keys()],
  paintMinutes: minutesOnSheet(facts, [3, 10]),
  rules: ['R19'],
});
