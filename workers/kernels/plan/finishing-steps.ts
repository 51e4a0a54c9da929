import type { Mix } from '../../../app/model/wash-plan.ts';
import { dryingMinutes } from './drying-minutes.ts';
import { paintMinutes } from './paint-minutes.ts';
import { type PlanFacts, usedMixes } from './plan-facts.ts';
import { minutesOnSheet, sheetPace } from './sheet-pace.ts';
import { quietStep, type StepDraft } from './step-draft.ts';

const familiesOf = (facts: PlanFacts, indices: readonly number[]): number[] =>
  [...new Set(indices.flatMap((i) => facts.slots[i]?.family ?? []))].sort((a, b) => a - b);

/** Soft lights beside paints that lift easily: taken out rather than kept. */
export const liftStep = (facts: PlanFacts, slots: readonly number[]): StepDraft => ({
  ...quietStep,
  key: 'lift/sheet/0',
  kind: 'lift',
  title: 'Lift the soft lights',
  prompt:
    'Where the edge of a light should melt, wet it with a clean brush, wait, and blot. Do not scrub.',
  watch: 'Soft or thin paper roughens quickly: stop early.',
  slots,
  families: familiesOf(facts, slots),
  technique: 'lifting',
  paintMinutes: minutesOnSheet(facts, [2, 6]),
  ...dryingMinutes(facts, 'lift'),
  rules: ['R11', 'R17'],
});

/** Texture where the picture is broken up anyway, never in plain areas (R21). */
export const splatterStep = (
  facts: PlanFacts,
  slots: readonly number[],
  mixes: readonly Mix[],
): StepDraft => ({
  ...quietStep,
  key: 'splatter/sheet/0',
  kind: 'splatter',
  title: 'Splatter',
  prompt:
    'Cover what must stay clean, try it on a scrap, then tap the brush against a finger over the broken shapes only.',
  watch: 'On dry paper the spots are hard and small. A few are enough, none in plain areas.',
  slots,
  families: familiesOf(facts, slots),
  mixes: usedMixes(mixes),
  technique: 'splatter',
  paintMinutes: minutesOnSheet(facts, [2, 5]),
  ...dryingMinutes(facts, 'splatter'),
  rules: ['R13', 'R21'],
});

/** A few touches need no more puddles than these (own figure). */
const mostAccentPuddles = 2;

/** The darkest rows, of those up to one value lighter than the darkest, L*: the others make no accent. */
const darkRows = (mixes: readonly Mix[]): Mix[] => {
  const painted = mixes
    .filter(({ parts }) => parts.length > 0)
    .sort((one, other) => one.expected[0] - other.expected[0]);
  const limit = (painted[0]?.expected[0] ?? 0) + 10;
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
  title: 'Accents',
  prompt:
    'With a small brush, nearly dry, and the darkest puddles, thicker than before, set the few darkest touches, most near the centre of interest.',
  watch: 'Fewer than you want to.',
  bands: [...new Set(slots.flatMap((i) => facts.slots[i]?.band ?? []))].sort((a, b) => a - b),
  slots,
  families: familiesOf(facts, slots),
  mixes: usedMixes(darkRows(mixes)),
  technique: 'dry brush',
  paintMinutes: paintMinutes(0, 40 * sheetPace(facts), { cm2PerMinute: 1, secondsPerShape: 8 }),
  ...dryingMinutes(facts, 'accents'),
  rules: ['R3', 'R4'],
});

export const lastLookStep = (facts: PlanFacts): StepDraft => ({
  ...quietStep,
  key: 'last-look/sheet/0',
  kind: 'last-look',
  title: 'Last look',
  prompt:
    'Stand back and squint at sheet and photo. Compare the whites, then the darks. If nothing calls, stop.',
  watch: '',
  slots: [...facts.slots.keys()],
  paintMinutes: minutesOnSheet(facts, [3, 10]),
  rules: ['R19'],
});
