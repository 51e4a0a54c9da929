import type { Step } from '../../../../app/model/wash-plan.ts';
import { type BrokenRule, broken, type Check } from './broken-rule.ts';

const longestPrompt = 160;
/** No change of hers leads here: only a fault of ours. */
const incomplete = 'Something is missing in this step: take your last change back.';

const fault = (rule: string, step: Step, what: string): BrokenRule =>
  broken(rule, step, what, incomplete);

/** R15, R7: every step says all it must, once, in order, of mixes that are there. */
export const saidInFull: Check = ({ steps, mixes }) => {
  const rows = new Map(mixes.map((mix) => [mix.id, mix]));
  const keys = new Set<string>();
  return steps.flatMap((step, i): BrokenRule[] => {
    const { key, n, prompt, kind, bands, watch } = step;
    const found: BrokenRule[] = [];
    if (n !== i + 1) found.push(fault('order', step, `${key} is number ${n}`));
    if (prompt === '' || prompt.length > longestPrompt) {
      found.push(fault('R15', step, `prompt of ${key}`));
    }
    if (kind === 'wash' && (bands.length === 0 || step.mixes.length === 0)) {
      found.push(fault('R15', step, `${key} has no band or no mix`));
    }
    if (kind === 'wash' && watch === '') found.push(fault('R7', step, `${key} says no watch`));
    for (const id of step.mixes) {
      if (!rows.get(id)?.parts.length) found.push(fault('mix', step, `${id} is missing`));
    }
    if (keys.has(key)) found.push(fault('keys', step, `twice ${key}`));
    keys.add(key);
    return found;
  });
};

/** R14: after the hair dryer the sheet cools before it is felt. */
export const coolAfterDryer: Check = ({ steps }) =>
  steps
    .filter(
      ({ kind, cautions }) => kind === 'dry' && !cautions.some((text) => /dryer.*cool/i.test(text)),
    )
    .map((step) => fault('R14', step, `${step.key} does not tell her to let the sheet cool`));

/** R8, R17: strokes are softened in the step that makes them. */
export const softenInside: Check = ({ steps }) =>
  steps
    .filter(({ soften, kind }) => soften !== '' && kind !== 'wash' && kind !== 'unmask')
    .map((step) => fault('R8, R17', step, `${step.key} softens strokes of another step`));
