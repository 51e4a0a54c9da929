import type { Weather } from '../../drying/weather.ts';
import {
  careWithPaint,
  cautionInWords,
  deferral,
  namesInShort,
  paintsToMind,
  paintsWithoutDust,
} from '../../paint/cautions.ts';
import type { Paint } from '../../paint/paint.ts';
import { capitalize } from '../../words/numbers.ts';
import type { Step, WashPlan } from '../plan.ts';

// Sentences on mask, dryer, blade and flicked paint: common practice, no source.

/** Also where she chooses to mask, before anything is planned. */
export const careWithMask =
  'Most masking fluid holds latex and ammonia: open a window, keep it off skin and eyes; not for anyone allergic to latex.';
const careWithMaskOff = 'Most masking fluid holds latex: not for anyone allergic to it.';
const noHeat = 'No heat on the mask.';

/** Also where she says that she has one. The clock reckons with the same setting (`drying/evaporation.ts`). */
export const careWithDryer =
  'Hair dryer only once the shine has gone, on its cool setting, never a hot-air gun, away from the water jar and wet hands. Let the sheet cool 2 to 3 minutes before you feel it.';
export const dryerSocket = 'The hair dryer on a socket with a safety switch (RCD).';
const dryerNotYet = 'No hair dryer yet: the mask lies on the sheet, and no heat must come on it.';

const careWithBlade = 'A blade cuts: draw it away from the hand that holds the sheet.';
const bladeCover = 'The blade goes back in its cover.';
const careWithFlicking = 'Flicked paint flies: keep it away from eyes, food and animals.';

/** Whether a step is done with a blade, or may be. */
export const usesBlade = ({ technique, touches }: Pick<Step, 'technique' | 'touches'>): boolean =>
  technique === 'scraping' || (touches ?? []).some((touch) => touch.technique === 'scraping');

type Placed = Pick<Step, 'kind' | 'technique' | 'touches' | 'mixes'>;

/** Whether the mask lies on the sheet when step `index` begins. */
function isMasked(steps: readonly Pick<Step, 'kind'>[], index: number): boolean {
  const last = steps.slice(0, index).findLast(({ kind }) => kind === 'mask' || kind === 'unmask');
  return last?.kind === 'mask';
}

/** What is said of a dryer at a drying check; nothing where none is in use. */
export const dryerCautions = (
  steps: readonly Pick<Step, 'kind'>[],
  index: number,
  { hairDryer }: Pick<Weather, 'hairDryer'>,
): string[] => {
  if (!hairDryer || steps[index]?.kind !== 'dry') return [];
  return [isMasked(steps, index) ? dryerNotYet : careWithDryer];
};

/** The paints in the brush at a step: those of its mixes, and what meets these wet. */
export function paintsOfStep(
  step: Pick<Step, 'mixes'>,
  { mixes, runs = [], optics }: Pick<WashPlan, 'mixes' | 'runs' | 'optics'>,
): Paint[] {
  const ids = new Set(step.mixes);
  const parts = [
    ...mixes.filter(({ id }) => ids.has(id)).flatMap((mix) => mix.parts),
    ...runs.filter(({ mix }) => ids.has(mix)).flatMap(({ meets }) => meets?.parts ?? []),
  ];
  const used = new Set(parts.map(({ paint }) => paint));
  return optics.filter(({ id }) => used.has(id));
}

/** As much of a plan as its cautions follow from. */
type Cautious = Pick<WashPlan, 'mixes' | 'runs' | 'optics'> & {
  readonly weather: Pick<Weather, 'hairDryer'>;
};

function handlingCautions(steps: readonly Placed[], index: number, plan: Cautious): string[] {
  const { weather, optics } = plan;
  const step = steps[index];
  const noDust = paintsWithoutDust(optics);
  switch (step.kind) {
    case 'prepare':
      return [
        careWithPaint,
        ...(steps.some(usesBlade) ? [bladeCover] : []),
        ...(weather.hairDryer ? [dryerSocket] : []),
      ];
    case 'mask':
      return [`${careWithMask} ${noHeat}`];
    case 'unmask':
      return [
        `${careWithMaskOff} ${noHeat}`,
        ...(noDust.length > 0
          ? [
              `${capitalize(namesInShort(noDust))} may cling to the crumbs: take them up with a damp tissue, do not blow.`,
            ]
          : []),
      ];
    case 'dry':
      return dryerCautions(steps, index, weather);
    case 'splatter':
      return step.technique === 'splatter' ? [careWithFlicking] : [];
    case 'last-lights':
      return usesBlade(step) ? [careWithBlade] : [];
    default:
      return [];
  }
}

/**
 * Steps with all that may hurt someone said at each where it may: by what is done there and by the paints in the
 * brush. Nothing is said of what is not in this painting.
 */
export const withCautions = <S extends Placed>(steps: readonly S[], plan: Cautious): S[] =>
  steps.map((step, n) => ({
    ...step,
    cautions: [...handlingCautions(steps, n, plan), ...paintsToMind(paintsOfStep(step, plan))],
  }));

/** Each paint of a plan that asks for care, in full. */
export const paintCautions = ({ optics }: Pick<WashPlan, 'optics'>): string[] =>
  optics.flatMap((paint) => cautionInWords(paint) ?? []);

/** Every caution of a plan once, in the order they fall due, the paints in full; at the end whose word counts. */
export function planCautions(
  plan: Pick<WashPlan, 'mixes' | 'runs' | 'optics' | 'steps'>,
): string[] {
  const told = plan.steps.map((step) => {
    const short = paintsToMind(paintsOfStep(step, plan));
    return step.cautions.filter((caution) => !short.includes(caution));
  });
  const [first = [], ...later] = told;
  return [...new Set([...first, ...paintCautions(plan), ...later.flat(), deferral])];
}
