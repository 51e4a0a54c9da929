import type { Range } from '../../colour/lab.ts';
import { estimateDrying } from '../../drying/estimate-drying.ts';
import { reducedWaterGrams, usualWaterGrams, type WaterKind } from '../../drying/water.ts';
import { coolTestWorks } from '../../drying/weather.ts';
import type { TitleSaid } from '../../words/plan/titles.ts';
import type { Said } from '../../words/plan/words.ts';
import type { Step } from '../plan.ts';
import type { PlanFacts } from '../plan-facts.ts';

/** A step before it has its place: the number and the expected sheet come with the order. */
export type StepDraft = Omit<Step, 'n' | 'after' | 'title' | 'prompt' | 'watch' | 'soften'> & {
  readonly title: TitleSaid;
  readonly prompt: Said;
  readonly watch: readonly Said[];
  readonly soften: readonly Said[];
};

/** Default fields of steps that put nothing wet down. */
export const quietStep = {
  watch: [],
  bands: [],
  families: [],
  slots: [],
  mixes: [],
  paper: 'bone dry',
  technique: 'none',
  soften: [],
  shineMinutes: [0, 0],
  dryMinutes: [0, 0],
  cautions: [],
  rules: [],
} as const satisfies Partial<StepDraft>;

/**
 * How long painting takes: area by a pace and some seconds a shape, shapes counted up to 150 (beyond
 * that she works in texture). Own estimate, no source; a wide range on purpose.
 */
export function paintMinutes(
  areaCm2: number,
  shapes: number,
  pace: { readonly cm2PerMinute: number; readonly secondsPerShape: number },
): Range {
  const minutes = areaCm2 / pace.cm2PerMinute + (Math.min(shapes, 150) * pace.secondsPerShape) / 60;
  return [Math.max(1, Math.floor(0.7 * minutes)), Math.max(2, Math.ceil(1.5 * minutes))];
}

/** A quarter sheet, 381 x 279 mm: what the minutes of handling are reckoned for, mm2. */
const quarterSheet = 381 * 279;

/**
 * How long handling takes beside a quarter sheet: with the side of the sheet, not its area. A postcard takes about
 * two fifths, a full sheet twice as long, and no sheet takes less than a third. Own estimate, no source.
 */
export function sheetPace({ reading }: Pick<PlanFacts, 'reading'>): number {
  const { widthMm, heightMm } = reading.sheet;
  return Math.min(2, Math.max(1 / 3, Math.sqrt((widthMm * heightMm) / quarterSheet)));
}

/** Minutes of handling a quarter sheet, as they are on this one; never under a minute, nor without a range. */
export function minutesOnSheet(facts: Pick<PlanFacts, 'reading'>, [low, high]: Range): Range {
  const pace = sheetPace(facts);
  const least = Math.max(1, Math.round(low * pace));
  return [least, Math.max(least + 1, Math.round(high * pace))];
}

/** Setting so many small marks: a few seconds each, drying of the hand's work apart (own). */
export const markMinutes = (facts: Pick<PlanFacts, 'reading'>, count: number): Range =>
  paintMinutes(0, count * sheetPace(facts), { cm2PerMinute: 1, secondsPerShape: 8 });

const fine = (minutes: number): number =>
  minutes < 10 ? Math.round(minutes * 2) / 2 : Math.round(minutes);

const rounded = ([low, high]: Range): Range => [fine(low), Math.max(fine(low), fine(high), 0.5)];

/** Washes go on before the mask comes off, all else after it. */
const isWash = (kind: WaterKind): boolean =>
  kind === 'wash' || kind === 'wetInWet' || kind === 'stroke' || kind === 'glaze';

/**
 * Both drying clocks of a wash of this kind, minutes from the end of painting, and its water where it is not
 * the usual. Under a mask no hair dryer is used (R12).
 */
export function dryingMinutes(
  { weather, paper, water, noHeat, dryingModel }: PlanFacts,
  kind: WaterKind,
) {
  const less = water === 'less' ? reducedWaterGrams[kind] : undefined;
  const conditions = {
    waterGramsPerSquareMetre: less ?? usualWaterGrams[kind],
    weather: noHeat && isWash(kind) ? { ...weather, hairDryer: false } : weather,
    paperGsm: paper.gsm,
  };
  const estimate = estimateDrying(conditions, undefined, dryingModel);
  return {
    shineMinutes: rounded(estimate.shineMinutes),
    dryMinutes: rounded(estimate.dryMinutes),
    ...(less !== undefined && { waterGramsPerSquareMetre: less }),
  };
}

/** The key of the drying check that waits for the step with key `after`. */
export const dryKeyOf = (after: string): string => `dry/${after.replace(/^wash\//, '')}`;

/** The check that the sheet is bone dry after the step with key `after`: nothing else is done. */
export function dryStep(facts: PlanFacts, after: string): StepDraft {
  const { weather } = facts;
  return {
    ...quietStep,
    key: dryKeyOf(after),
    kind: 'dry',
    title: { say: 'title/dry' },
    prompt: { say: coolTestWorks(weather) ? 'dry/wait' : 'dry/wait-slow' },
    watch: [{ say: 'dry/damp' }],
    paper: 'damp',
    // With a hair dryer the sheet has to cool before it can be felt (R14).
    paintMinutes: weather.hairDryer ? [3, 5] : [1, 2],
    rules: ['R5', 'R7', 'R14'],
  };
}
