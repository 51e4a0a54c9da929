import { paintMinutes } from './paint-minutes.ts';
import { areaCm2, type PlanFacts } from './plan-facts.ts';
import { allSmall, plannedWhites, slotsOfWhites, whitesInWords } from './planned-whites.ts';
import { quietStep, type StepDraft } from './step-draft.ts';

/** What is masked. */
export interface Masked {
  readonly count: number;
  readonly slots: readonly number[];
  readonly cm2: number;
  readonly isSmall: boolean;
  readonly othersToo: boolean;
}

/** From this many small whites on nobody paints round them on wet paper (own figure). */
const manySmall = 3;

/** A reading without a list of whites: the small ones, where there are many. */
function smallOnes(facts: PlanFacts): Masked {
  const slots = [...facts.slots.keys()].filter((i) => {
    const slot = facts.slots[i];
    return slot?.reserve && slot.share > 0;
  });
  const { smallCount } = facts.reserves;
  const cm2 = areaCm2(facts, slots) / 10;
  return { count: smallCount, slots, cm2, isSmall: true, othersToo: true };
}

/** Those whose way is to be masked; without a list the small ones a wet wash would flood. Null: none. */
export function masked(facts: PlanFacts, wetWash: boolean): Masked | null {
  const whites = plannedWhites(facts);
  if (!whites) {
    return wetWash && facts.reserves.smallCount >= manySmall ? smallOnes(facts) : null;
  }
  if (whites.mask.length === 0) return null;
  return {
    count: whites.mask.length,
    slots: slotsOfWhites(whites.mask),
    cm2: whites.mask.reduce((sum, { areaMm2 }) => sum + areaMm2, 0) / 100,
    isSmall: allSmall(whites.mask),
    othersToo: whites.round.length > 0,
  };
}

export function maskStep({ count, slots, cm2, isSmall, othersToo }: Masked): StepDraft {
  return {
    ...quietStep,
    key: 'mask/sheet/0',
    kind: 'mask',
    title: `Mask the ${isSmall ? 'small ' : ''}white${count === 1 ? '' : 's'}`,
    prompt: `Brush masking fluid over ${whitesInWords(count, isSmall)} to mask, a little generously, on dry paper. Let it dry clear before any water comes near.`,
    watch: `${othersToo ? 'Paint round the other whites instead. ' : ''}Try it on a scrap: soft paper tears.`,
    slots,
    technique: 'masking',
    paintMinutes: paintMinutes(cm2, count, { cm2PerMinute: 20, secondsPerShape: 10 }),
    cautions: [
      'Masking fluid holds latex and ammonia: open a window, keep it off skin and eyes; not for anyone allergic to latex. No heat on it.',
    ],
    rules: ['R1'],
  };
}

export const unmaskStep = ({ count, slots, cm2 }: Masked): StepDraft => ({
  ...quietStep,
  key: 'unmask/sheet/0',
  kind: 'unmask',
  title: 'Take the mask off',
  prompt:
    'Only when the whole sheet is bone dry: rub the mask off with a clean finger, towards the middle of each white.',
  slots,
  technique: 'masking',
  soften: 'Edges that are too sharp: touch them with a clean, barely damp brush and blot.',
  paintMinutes: paintMinutes(cm2, count, { cm2PerMinute: 30, secondsPerShape: 5 }),
  cautions: ['No heat on the mask.'],
  rules: ['R12'],
});
