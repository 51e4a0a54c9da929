import { outerBorders, softShare } from '../outer-borders.ts';
import { type BrokenRule, broken, type Check, passageOf, washesOf } from './broken-rule.ts';

/** Well beside the figures by which a wash is proposed wet or dry (own figures). */
const mostlyHard = 0.35;
const mostlySoft = 0.65;

/** Wet paper makes soft edges and dry paper hard ones: the borders of a wash ask for one of them. */
export const edgesByTechnique: Check = (plan, { borders }) => {
  if (!borders) return [];
  const begun = new Set<string>();
  return washesOf(plan).flatMap((step): BrokenRule[] => {
    const first = !begun.has(passageOf(step));
    begun.add(passageOf(step));
    const outer = outerBorders({ borders }, step.slots);
    if (!outer.some(({ lengthMm }) => lengthMm > 0)) return [];
    const soft = softShare(outer);
    const wet = step.technique === 'wet-in-wet';
    const sentence =
      wet && soft < mostlyHard
        ? 'On wet paper the crisp edges of these shapes run and come out soft.'
        : !wet && first && soft > mostlySoft
          ? 'Most edges here are soft: on dry paper they dry hard unless you soften each one at once.'
          : null;
    return sentence ? [broken('edges', step, `${step.key} is ${step.technique}`, sentence)] : [];
  });
};

/** From this load on paint is cream: it covers. */
const thick = 6;

/** A glaze is thin: what lies below shines through it. */
export const thinGlaze: Check = (plan) =>
  washesOf(plan).flatMap((step): BrokenRule[] => {
    if (step.technique !== 'glaze') return [];
    const rows = plan.mixes.filter(({ id }) => step.mixes.includes(id));
    if (!rows.some(({ load }) => load >= thick)) return [];
    return [
      broken(
        'R10',
        step,
        `${step.key} glazes with thick paint`,
        'Paint this thick covers like a skin: nothing below shines through the glaze.',
      ),
    ];
  });
