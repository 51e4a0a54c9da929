import type { Weather } from '../../drying/weather.ts';
import type { Paint } from '../../paint/paint.ts';
import { cautionInWords, deferral, paintsToMind, paintsWithoutDust } from '../../words/cautions.ts';
import { type Said, type Sentence, words } from '../../words/plan/words.ts';
import type { Step, WashPlan } from '../plan.ts';

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
): Said[] => {
  if (!hairDryer || steps[index]?.kind !== 'dry') return [];
  return [{ say: isMasked(steps, index) ? 'caution/dryer-not-yet' : 'caution/dryer' }];
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

const namesOf = (paints: readonly Paint[]): string[] => paints.map(({ name }) => name);

/** What to mind while these paints are in the brush: those without dust in one sentence. */
function mindingPaints(paints: readonly Paint[]): Said[] {
  const { poisons, noDust, others } = paintsToMind(paints);
  const said: Said[] = [];
  if (poisons.length > 0) said.push({ say: 'caution/poison', paints: namesOf(poisons) });
  if (noDust.length > 0) said.push({ say: 'caution/no-dust', paints: namesOf(noDust) });
  for (const { name, ci, properties } of others) {
    said.push({ say: 'caution/of-paint', paint: name, ci, caution: properties.caution });
  }
  return said;
}

function handlingCautions(steps: readonly Placed[], index: number, plan: Cautious): Said[] {
  const { weather, optics } = plan;
  const step = steps[index];
  const noDust = paintsWithoutDust(optics);
  switch (step.kind) {
    case 'prepare':
      return [
        { say: 'caution/paint' },
        ...(steps.some(usesBlade) ? [{ say: 'caution/blade-cover' } as const] : []),
        ...(weather.hairDryer ? [{ say: 'caution/dryer-socket' } as const] : []),
      ];
    case 'mask':
      return [{ say: 'caution/mask' }];
    case 'unmask':
      return [
        { say: 'caution/mask-off' },
        ...(noDust.length > 0 ? [{ say: 'caution/crumbs', paints: namesOf(noDust) } as const] : []),
      ];
    case 'dry':
      return dryerCautions(steps, index, weather);
    case 'splatter':
      return step.technique === 'splatter' ? [{ say: 'caution/flicking' }] : [];
    case 'last-lights':
      return usesBlade(step) ? [{ say: 'caution/blade' }] : [];
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
    cautions: [...handlingCautions(steps, n, plan), ...mindingPaints(paintsOfStep(step, plan))],
  }));

/** Each paint of a plan that asks for care, in full. */
export const paintCautions = ({ optics }: Pick<WashPlan, 'optics'>): string[] =>
  optics.flatMap((paint) => cautionInWords(paint) ?? []);

/** Whether a caution of a step is about a hair dryer; one of an older plan tells by its words. */
export const isOfDryer = (caution: Sentence): boolean =>
  typeof caution === 'string'
    ? /hair dryer/i.test(caution)
    : caution.say === 'caution/dryer' || caution.say === 'caution/dryer-not-yet';

/** Every caution of a plan once, in words, as they fall due, the paints in full; at the end whose word counts. */
export function planCautions(
  plan: Pick<WashPlan, 'mixes' | 'runs' | 'optics' | 'steps'>,
): string[] {
  const told = plan.steps.map((step) => {
    const short = mindingPaints(paintsOfStep(step, plan)).map(words);
    return step.cautions.map(words).filter((caution) => !short.includes(caution));
  });
  const [first = [], ...later] = told;
  return [...new Set([...first, ...paintCautions(plan), ...later.flat(), deferral])];
}
