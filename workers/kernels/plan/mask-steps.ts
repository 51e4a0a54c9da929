import { paintMinutes } from './paint-minutes.ts';
import { areaCm2, type PlanFacts } from './plan-facts.ts';
import { quietStep, type StepDraft } from './step-draft.ts';

const reservesOfPlan = ({ slots }: PlanFacts): number[] =>
  [...slots.keys()].filter((i) => slots[i]?.reserve && (slots[i]?.share ?? 0) > 0);

/** From this many small whites on nobody paints round them on wet paper (own figure). */
const manySmall = 3;

/** Masking is for small or many whites that a wet wash would flood; else she paints round them. */
export const wantsMask = ({ reserves }: PlanFacts, wetWash: boolean): boolean =>
  wetWash && reserves.smallCount >= manySmall;

const shapesMasked = ({ reserves }: PlanFacts): number => reserves.smallCount;

export function maskStep(facts: PlanFacts): StepDraft {
  const slots = reservesOfPlan(facts);
  return {
    ...quietStep,
    key: 'mask/sheet/0',
    kind: 'mask',
    title: 'Mask the small whites',
    prompt:
      'Brush masking fluid over the small whites, a little generously, on dry paper. Let it dry clear before any water comes near.',
    watch: 'Paint round the large whites instead. Try it on a scrap: soft paper tears.',
    slots,
    technique: 'masking',
    paintMinutes: paintMinutes(areaCm2(facts, slots) / 10, shapesMasked(facts), {
      cm2PerMinute: 20,
      secondsPerShape: 10,
    }),
    cautions: [
      'Masking fluid holds latex and ammonia: open a window, keep it off skin and eyes; not for anyone allergic to latex. No heat on it.',
    ],
    rules: ['R1'],
  };
}

export function unmaskStep(facts: PlanFacts): StepDraft {
  const slots = reservesOfPlan(facts);
  return {
    ...quietStep,
    key: 'unmask/sheet/0',
    kind: 'unmask',
    title: 'Take the mask off',
    prompt:
      'Only when the whole sheet is bone dry: rub the mask off with a clean finger, towards the middle of each white.',
    slots,
    technique: 'masking',
    soften: 'Edges that are too sharp: touch them with a clean, barely damp brush and blot.',
    paintMinutes: paintMinutes(areaCm2(facts, slots) / 10, shapesMasked(facts), {
      cm2PerMinute: 30,
      secondsPerShape: 5,
    }),
    cautions: ['No heat on the mask.'],
    rules: ['R12'],
  };
}
