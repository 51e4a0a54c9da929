import type { Paint } from '../../../app/core/paint/paint.ts';
import { listMaterials } from '../../../app/core/plan/list-materials.ts';
import type { Step, WashPlan } from '../../../app/core/plan/plan.ts';
import { told } from './told.ts';

type Looked = Pick<WashPlan, 'mixes' | 'steps' | 'optics' | 'palette' | 'runs'>;

/** All a step tells her to do, sentence by sentence, without those that forbid something. */
function orders(step: Step): string[] {
  const {
    title,
    prompt,
    watch,
    soften,
    technique,
    brush = '',
    board = '',
    touches = [],
  } = told(step);
  const texts = [title, prompt, watch, soften, technique, brush, board];
  const all = [...texts, ...touches.flatMap((touch) => [touch.technique, touch.text])];
  return all
    .flatMap((text) => text.split(/(?<=[.:;?]) /))
    .filter((one) => !/^no\b|must not|never|do not/i.test(one));
}

const cautionSays = ({ properties }: Paint, word: RegExp): boolean =>
  word.test(properties.caution ?? '');

/** Paints that a step flicks: those of its puddles and what meets them. */
function inBrush(plan: Looked, step: Step): Paint[] {
  const ids = [
    ...plan.mixes.filter(({ id }) => step.mixes.includes(id)).flatMap(({ parts }) => parts),
    ...(plan.runs ?? [])
      .filter(({ mix }) => step.mixes.includes(mix))
      .flatMap(({ meets }) => meets?.parts ?? []),
  ].map(({ paint }) => paint);
  return plan.optics.filter(({ id }) => ids.includes(id));
}

/**
 * Where a plan tells her to do what a caution of its paints, of the mask or of the dryer forbids: read off its words
 * alone, so that it holds whatever the steps are made from. Empty for a plan that keeps to its own cautions.
 */
export function contradictions(plan: Looked): string[] {
  let masked = false;
  const found = plan.steps.flatMap((step) => {
    if (step.kind === 'mask') masked = true;
    if (step.kind === 'unmask') masked = false;
    return orders(step).flatMap((order) => {
      const scraped = /\bblade\b|\bscrap(e|ing)\b/i.test(order);
      const flicked = /splatter|\bflick|tap the brush/i.test(order) && !/clean water/.test(order);
      const never = /\bsand(ing|paper)?\b|\bspray|hot-air|\bfinger\b.*mask|mask.*\bfinger\b/i.test(
        order,
      );
      const heats = masked && /\bhair dryer\b/i.test(order);
      const forbidden =
        (scraped && plan.optics.some((paint) => cautionSays(paint, /scrape|dust/i))) ||
        (flicked &&
          inBrush(plan, step).some((paint) => cautionSays(paint, /splatter|spray|dust/i)));
      return forbidden || never || heats ? [`${step.key}: ${order}`] : [];
    });
  });
  const blade = listMaterials(plan as WashPlan).some(({ things }) => /blade/.test(things.join()));
  const noBlade = plan.optics.some((paint) => cautionSays(paint, /scrape|dust/i));
  return [...found, ...(blade && noBlade ? ['a blade is laid out'] : [])];
}

/** Paints in the brush whose caution is not told at the step itself. */
export const untold = (plan: Looked): string[] =>
  plan.steps.flatMap((step) =>
    inBrush(plan, step)
      .filter(({ properties }) => properties.caution)
      .filter(
        ({ name }) => !told(step.cautions).join(' ').toLowerCase().includes(name.toLowerCase()),
      )
      .map(({ name }) => `${step.key}: ${name}`),
  );
