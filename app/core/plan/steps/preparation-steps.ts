import type { Range } from '../../colour/lab.ts';
import type { PaperChoice } from '../../drying/paper-choice.ts';
import { usualWaterGrams } from '../../drying/water.ts';
import type { Weather } from '../../drying/weather.ts';
import type { Hold } from '../../words/plan/steps.ts';
import type { Said } from '../../words/plan/words.ts';
import type { Step } from '../plan.ts';
import { areaCm2, type PlanFacts, shapeCount, usedMixes } from '../plan-facts.ts';
import { waterKindOf } from '../water-kind.ts';
import {
  minutesOnSheet,
  paintMinutes,
  quietStep,
  type StepDraft,
  sheetPace,
} from './step-draft.ts';

const everySlot = ({ slots }: PlanFacts): number[] => [...slots.keys()];

/** Sheet, water and brushes; how the sheet is held is filled in once all steps stand (`preparedSteps`). */
export const prepareStep = (facts: PlanFacts): StepDraft => ({
  ...quietStep,
  key: 'prepare/sheet/0',
  kind: 'prepare',
  title: { say: 'title/prepare' },
  prompt: { say: 'prepare/plain' },
  paintMinutes: minutesOnSheet(facts, [3, 8]),
});

/** Mix what the first wash needs, and more than it needs, and test it. */
export function puddlesStep(facts: PlanFacts): StepDraft {
  const mixes = facts.passages.flatMap((passage) => passage.washes[0]?.mixes ?? []);
  const puddles = new Set(mixes.flatMap((mix) => mix.puddle ?? []));
  return {
    ...quietStep,
    key: 'puddles/sheet/1',
    kind: 'puddles',
    title: { say: 'title/puddles', puddles: puddles.size },
    prompt: { say: 'puddles/mix', puddles: puddles.size },
    watch: [{ say: 'puddles/judge-dry' }],
    mixes: usedMixes(mixes),
    families: mixes.filter((mix) => mix.parts.length > 0).map((mix) => mix.family),
    paintMinutes: minutesOnSheet(facts, [3 + puddles.size, 6 + 3 * puddles.size]),
    rules: ['R15'],
  };
}

/** Outlines of the big shapes: on a quarter sheet she draws up to 60 of them, on a smaller one fewer. */
export function transferStep(facts: PlanFacts): StepDraft {
  const slots = everySlot(facts);
  return {
    ...quietStep,
    key: 'transfer/sheet/0',
    kind: 'transfer',
    title: { say: 'title/transfer' },
    prompt: { say: 'transfer/draw' },
    watch: [{ say: 'transfer/no-scrubbing' }],
    slots,
    paintMinutes: paintMinutes(
      areaCm2(facts, slots) / 4,
      Math.min(60 * sheetPace(facts), shapeCount(facts, slots)),
      {
        cm2PerMinute: 40,
        secondsPerShape: 8,
      },
    ),
    rules: ['R3'],
  };
}

/** How the sheet is held while it is wet. */
interface PaperFixing {
  readonly hold: Hold;
  /** What to mind; may be empty. */
  readonly mind: readonly Said[];
  readonly minutes: Range;
}

/** From so much water on a sheet cockles as one that was wetted first, g/m2 (own). */
const wettedGrams = 100;

/** Weights between those the trade sells, g/m2: 190 / 300 / 640 (90, 140, 300 lb). */
const limits = { thin: 250, thick: 500 } as const;

/**
 * How a sheet is held, by its weight, what lies under it, and the most water any step puts down (g/m2). Thin paper
 * must be stretched for wet-in-wet, 300 g/m2 is taped, 640 lies as it is: common practice, no source.
 */
export function paperFixing(
  { gsm }: PaperChoice,
  { backing }: Weather,
  mostWater: number,
): PaperFixing {
  const wetted = mostWater >= wettedGrams;
  if (backing === 'block') return { hold: 'on its block', mind: [], minutes: [2, 5] };
  if (backing === 'wet')
    return {
      hold: 'soaked',
      mind: [{ say: 'prepare/soaked' }],
      minutes: [8, 20],
    };
  if (gsm >= limits.thick)
    return {
      hold: 'as it is',
      mind: [],
      minutes: [2, 5],
    };
  if (gsm >= limits.thin)
    return wetted
      ? {
          hold: 'gummed',
          mind: [{ say: 'prepare/low-tack' }],
          minutes: [4, 10],
        }
      : { hold: 'taped or clipped', mind: [], minutes: [3, 8] };
  return wetted
    ? {
        hold: 'stretched',
        mind: [{ say: 'prepare/stretch-early' }],
        minutes: [10, 20],
      }
    : {
        hold: 'taped all round',
        mind: [{ say: 'prepare/cockles' }],
        minutes: [4, 10],
      };
}

/** Water a step puts down, g/m2; 0 where it wets nothing. */
function waterGrams(step: Step): number {
  const kind = waterKindOf(step);
  return step.waterGramsPerSquareMetre ?? (kind ? usualWaterGrams[kind] : 0);
}

/** The steps as they stand at last, the first of them with how the sheet is held for the wettest of them. */
export function addPaperFixing(facts: PlanFacts, steps: readonly Step[]): Step[] {
  const mostWater = Math.max(0, ...steps.map(waterGrams));
  const { hold, mind, minutes } = paperFixing(facts.paper, facts.weather, mostWater);
  return steps.map((step) =>
    step.kind === 'prepare'
      ? {
          ...step,
          prompt: { say: 'prepare/sheet', hold },
          watch: mind,
          paintMinutes: minutesOnSheet(facts, minutes),
        }
      : step,
  );
}
