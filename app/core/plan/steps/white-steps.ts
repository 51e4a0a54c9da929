import { manySmallWhites } from '../../limits.ts';
import type { Paint } from '../../paint/paint.ts';
import { isSmallWhite, type White, type WhiteWay } from '../../reading/whites/whites.ts';
import { slotsOfMarks, sparklesOf } from '../details/place-marks.ts';
import { areaCm2, type PlanFacts, paintsNotToScrape } from '../plan-facts.ts';
import { dryingMinutes, paintMinutes, quietStep, type StepDraft } from './step-draft.ts';

type WhitesByWay = Readonly<Record<WhiteWay, readonly White[]>>;

/**
 * The whites by the way they are kept, those left out that these paints make no white of; null where
 * the reading is from before whites were listed.
 */
export function plannedWhites({
  reading,
  slots,
}: Pick<PlanFacts, 'reading' | 'slots'>): WhitesByWay | null {
  if (!reading.whites) return null;
  const kept = reading.whites.filter(({ slot }) => slots[slot]?.reserve);
  const by = (way: WhiteWay): White[] => kept.filter((white) => white.way === way);
  return { round: by('round'), mask: by('mask'), last: by('last') };
}

/** The slots some whites lie in, each once. */
const slotsOfWhites = (whites: readonly White[]): number[] =>
  [...new Set(whites.map(({ slot }) => slot))].sort((x, y) => x - y);

/** Those that lie in a passage. */
export const whitesIn = (
  { slots }: Pick<PlanFacts, 'slots'>,
  passage: string,
  whites: readonly White[],
): White[] => whites.filter(({ slot }) => slots[slot]?.passage === passage);

/** Whether a passage has whites that a wash must leave out. */
export function hasWhitesToLeave(facts: PlanFacts, passage: string): boolean {
  const { slots } = facts;
  if (!slots.some((slot) => slot.passage === passage && slot.reserve && slot.share > 0)) {
    return false;
  }
  const whites = plannedWhites(facts);
  return !whites || whitesIn(facts, passage, [...whites.round, ...whites.mask]).length > 0;
}

export const allSmall = (whites: readonly White[]): boolean => whites.every(isSmallWhite);

/** What is masked. */
export interface Masked {
  readonly count: number;
  readonly slots: readonly number[];
  readonly cm2: number;
  readonly isSmall: boolean;
  readonly othersToo: boolean;
}

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
export function whitesToMask(facts: PlanFacts, wetWash: boolean): Masked | null {
  const whites = plannedWhites(facts);
  if (!whites) {
    return wetWash && facts.reserves.smallCount >= manySmallWhites ? smallOnes(facts) : null;
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
    title: { say: 'title/mask', count, isSmall },
    prompt: { say: 'mask/lay', count, isSmall },
    watch: [...(othersToo ? [{ say: 'mask/paint-round' } as const] : []), { say: 'mask/try' }],
    slots,
    technique: 'masking',
    paintMinutes: paintMinutes(cm2, count, { cm2PerMinute: 20, secondsPerShape: 10 }),
    rules: ['R1'],
  };
}

export const unmaskStep = ({ count, slots, cm2 }: Masked): StepDraft => ({
  ...quietStep,
  key: 'unmask/sheet/0',
  kind: 'unmask',
  title: { say: 'title/unmask' },
  prompt: { say: 'unmask/rub' },
  slots,
  technique: 'masking',
  soften: [{ say: 'unmask/soften' }],
  paintMinutes: paintMinutes(cm2, count, { cm2PerMinute: 30, secondsPerShape: 5 }),
  rules: ['R12'],
});

/** Why no blade comes near this sheet; null where one may. Soft paper tears (common practice, no source). */
export function noBladeBecause(
  facts: Pick<PlanFacts, 'palette' | 'paints' | 'paper'>,
): 'paper' | readonly Paint[] | null {
  const noDust = paintsNotToScrape(facts);
  if (noDust.length > 0) return noDust;
  return facts.paper.fibre === 'cotton' ? null : 'paper';
}

/**
 * The whites that are brought back when all else is done (R13), or null where there are none. The
 * expected sheet shows them as bare paper all along: what they are at the end.
 */
export function lastLightsStep(facts: PlanFacts): StepDraft | null {
  const lights = plannedWhites(facts)?.last ?? [];
  const sparkles = sparklesOf(facts);
  const count = lights.length + sparkles.length;
  if (count === 0) return null;
  const noBlade = noBladeBecause(facts);
  const noDust = noBlade === null || noBlade === 'paper' ? [] : noBlade;
  return {
    ...quietStep,
    key: 'last-lights/sheet/0',
    kind: 'last-lights',
    title: { say: 'title/last-lights', count },
    prompt: {
      say: 'last-lights/touch',
      count,
      isSmall: allSmall(lights),
      shown: sparkles.length > 0,
      blade: noBlade === null,
      noDust: noDust.map(({ name }) => name),
    },
    watch: [
      { say: 'last-lights/fewer' },
      ...(noBlade === 'paper' ? [{ say: 'last-lights/tears' } as const] : []),
    ],
    slots: [...new Set([...slotsOfWhites(lights), ...slotsOfMarks(facts, sparkles)])].sort(
      (x, y) => x - y,
    ),
    technique: 'opaque white',
    paintMinutes: paintMinutes(0, count, { cm2PerMinute: 1, secondsPerShape: 8 }),
    ...dryingMinutes(facts, 'accents'),
    rules: ['R13'],
  };
}
