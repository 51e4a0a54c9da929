import { longestPrompt, mostPaintsInMix, mostParts } from '../../limits.ts';
import { isSaid, type Said, words } from '../../words/plan/words.ts';
import type { Mix, Step } from '../plan.ts';
import { isOfDryer, usesBlade } from '../steps/step-cautions.ts';
import {
  type BrokenRule,
  broken,
  type Check,
  isBrokenUp,
  mixesOfStep,
  passageOf,
  washesOf,
} from './broken-rule.ts';

const tooLate: Record<string, Said> = {
  prepare: { say: 'ready/not-fixed' },
  puddles: { say: 'ready/not-mixed' },
  transfer: { say: 'ready/pencil-late' },
};

/** What is got ready comes before the first wash (common practice, no source). */
export const preparedFirst: Check = ({ steps }) => {
  const first = steps.findIndex(({ kind }) => kind === 'wash');
  if (first < 0) return [];
  return steps.slice(first).flatMap((step): BrokenRule[] => {
    const sentence = tooLate[step.kind];
    return sentence ? [broken('ready', step, `${step.key} after a wash`, sentence)] : [];
  });
};

/** R18: one passage is finished before the next, and every wash says what is done at their line. */
export const passagesApart: Check = (plan) => {
  const steps = washesOf(plan);
  const passages = steps.map(passageOf);
  if (new Set(passages).size < 2) return [];
  return steps.flatMap((step, n): BrokenRule[] => {
    const back = passages[n] !== passages[n - 1] && passages.slice(0, n).includes(passageOf(step));
    return [
      ...(back
        ? [
            broken('R18', step, `${step.key} goes back to a passage that was left`, {
              say: 'line/back',
              passage: passageOf(step),
            }),
          ]
        : []),
      ...(step.rules.includes('R18')
        ? []
        : [broken('R18', step, `${step.key} says nothing of the line`, { say: 'line/unsaid' })]),
    ];
  });
};

function badMix(step: Step, { id, parts }: Mix): BrokenRule[] {
  const sum = parts.reduce((all, part) => all + part.parts, 0);
  if (parts.length <= mostPaintsInMix && sum <= mostParts) return [];
  return [
    broken(
      'puddles',
      step,
      `mix ${id}: too many paints or parts`,
      parts.length > mostPaintsInMix ? { say: 'mix/many-paints' } : { say: 'mix/many-parts' },
    ),
  ];
}

/** At most so many puddles at hand in one wash, each of few paints. */
export const fewPuddles: Check = (plan, { puddlesPerWash }) =>
  washesOf(plan).flatMap((step): BrokenRule[] => {
    const rows = mixesOfStep(plan, step);
    const names = new Set(rows.flatMap(({ puddle }) => puddle ?? []));
    const many = names.size > puddlesPerWash;
    return [
      ...rows.flatMap((mix) => badMix(step, mix)),
      ...(many
        ? [
            broken('puddles', step, `${names.size} in ${step.key}`, {
              say: 'mix/many-puddles',
              puddles: names.size,
            }),
          ]
        : []),
    ];
  });

/** R21: spots belong where the picture is broken up anyway. */
export const splatterInTexture: Check = (plan) =>
  plan.steps.flatMap((step): BrokenRule[] => {
    if (step.kind !== 'splatter') return [];
    if (step.slots.every((i) => isBrokenUp(plan, i))) return [];
    return [broken('R21', step, `${step.key} in a plain area`, { say: 'plain/spots' })];
  });

const paintsOn: ReadonlySet<string> = new Set([
  'wash',
  'lift',
  'splatter',
  'details',
  'accents',
  'mask',
  'unmask',
]);

/** R13: opaque white and the blade come last. */
export const lightsLast: Check = ({ steps }) => {
  const index = steps.findIndex(({ kind }) => kind === 'last-lights');
  const lights = steps[index];
  if (!lights) return [];
  const blade =
    !usesBlade(lights) || lights.cautions.some((caution) => isSaid(caution, 'caution/blade'));
  return [
    ...steps
      .slice(index + 1)
      .filter(({ kind }) => paintsOn.has(kind))
      .map((step) =>
        broken('R13', step, `${step.key} after the last lights`, { say: 'last/over-lights' }),
      ),
    ...(blade ? [] : [broken('R13', lights, 'nothing said of the blade', { say: 'last/blade' })]),
  ];
};

/** R19: the last look comes when all is painted. */
export const lookLast: Check = ({ steps }) => {
  const index = steps.findIndex(({ kind }) => kind === 'last-look');
  const look = steps[index];
  const later = steps
    .slice(index + 1)
    .find(({ kind }) => paintsOn.has(kind) || kind === 'last-lights');
  if (!look || !later) return [];
  return [broken('R19', look, `${later.key} after the last look`, { say: 'last/after-look' })];
};

/** Internal invariant: no edit of hers can break it. */
const incomplete: Said = { say: 'step/incomplete' };

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
    const { length } = words(prompt);
    if (length === 0 || length > longestPrompt) {
      found.push(fault('R15', step, `prompt of ${key}`));
    }
    if (kind === 'wash' && (bands.length === 0 || step.mixes.length === 0)) {
      found.push(fault('R15', step, `${key} has no band or no mix`));
    }
    if (kind === 'wash' && watch.length === 0)
      found.push(fault('R7', step, `${key} says no watch`));
    for (const id of step.mixes) {
      if (!rows.get(id)?.parts.length) found.push(fault('mix', step, `${id} is missing`));
    }
    if (keys.has(key)) found.push(fault('keys', step, `twice ${key}`));
    keys.add(key);
    return found;
  });
};

/** R14: after the hair dryer the sheet cools before it is felt. */
export const coolAfterDryer: Check = ({ steps }, { hairDryer }) =>
  steps
    .filter(({ kind, cautions }) => hairDryer && kind === 'dry' && !cautions.some(isOfDryer))
    .map((step) => fault('R14', step, `${step.key} does not tell her to let the sheet cool`));

/** R8, R17: strokes are softened in the step that makes them. */
export const softenInside: Check = ({ steps }) =>
  steps
    .filter(({ soften, kind }) => soften.length > 0 && kind !== 'wash' && kind !== 'unmask')
    .map((step) => fault('R8, R17', step, `${step.key} softens strokes of another step`));
