import type { Slot } from '../../../app/model/reading.ts';
import type { Mix, Step, WashPlan } from '../../../app/model/wash-plan.ts';

/** What the rules are held against besides the plan. */
export interface RuleLimits {
  /** Overlying washes the paper bears (R9). */
  readonly washes: number;
  readonly puddlesPerWash: number;
}

type Check = (plan: WashPlan, limits: RuleLimits) => string[];

const washSteps = (plan: WashPlan): Step[] => plan.steps.filter((step) => step.kind === 'wash');

const passageOf = (step: Step): string => step.key.split('/')[1] ?? '';

const leavesWet = (step: Step): boolean => step.dryMinutes[1] > 0;

const maskFirst: Check = ({ steps }) => {
  const mask = steps.findIndex((step) => step.kind === 'mask');
  const wash = steps.findIndex((step) => step.kind === 'wash');
  if (mask < 0) return [];
  const broken: string[] = [];
  if (mask > wash) broken.push('R1: masked after a wash');
  if (steps[mask]?.paper !== 'bone dry') broken.push('R1: masked on wet paper');
  return broken;
};

const lightBeforeDark: Check = (plan) => {
  const broken: string[] = [];
  const reached = new Map<string, number>();
  for (const step of washSteps(plan)) {
    const lightest = Math.min(...step.bands);
    if (lightest <= (reached.get(passageOf(step)) ?? 0)) broken.push(`R2: ${step.key} is too late`);
    reached.set(passageOf(step), Math.max(...step.bands));
  }
  for (const [n, step] of plan.steps.entries()) {
    for (const [i, lab] of step.after.entries()) {
      const before = n === 0 ? plan.paper : plan.steps[n - 1]?.after[i];
      if (before && lab[0] > before[0] + 1e-6) broken.push(`R2: ${step.key} lightens slot ${i}`);
    }
  }
  return broken;
};

const areaOf = (slots: readonly Slot[], step: Step): number =>
  step.slots.reduce((all, i) => all + (slots[i]?.share ?? 0), 0);

const bigBeforeSmall: Check = (plan) => {
  const broken: string[] = [];
  const before = new Map<string, number>();
  for (const step of washSteps(plan)) {
    const area = areaOf(plan.slots, step);
    if (area > (before.get(passageOf(step)) ?? 1) + 1e-9) broken.push(`R3: ${step.key} is larger`);
    before.set(passageOf(step), area);
  }
  return broken;
};

const dryBeforeDry: Check = ({ steps }) => {
  const broken: string[] = [];
  let wet = false;
  for (const step of steps) {
    const wetInWet = step.technique === 'wet-in-wet';
    if (wetInWet !== (step.paper === 'shiny' || step.paper === 'satin')) {
      broken.push(`R5: ${step.key} is ${step.technique} on ${step.paper} paper`);
    }
    if (step.kind === 'dry') wet = false;
    else if (wet) broken.push(`R5, R7: ${step.key} on a sheet that has not dried`);
    if (leavesWet(step)) wet = true;
  }
  return broken;
};

const softenInside: Check = ({ steps }) =>
  steps
    .filter((step) => step.soften !== '' && step.kind !== 'wash' && step.kind !== 'unmask')
    .map((step) => `R8, R17: ${step.key} softens strokes of another step`);

const fewWashes: Check = (plan, { washes }) => {
  const over = plan.slots.map(
    (_, i) => washSteps(plan).filter((step) => step.slots.includes(i)).length,
  );
  const broken = over.flatMap((count, i) =>
    count > washes ? [`R9: ${count} washes on ${i}`] : [],
  );
  for (const passage of new Set(plan.slots.map((slot) => slot.passage))) {
    const bands = new Set(
      plan.slots.filter((one) => one.passage === passage && !one.reserve).map((one) => one.band),
    );
    const count = washSteps(plan).filter((step) => passageOf(step) === passage).length;
    if (count > bands.size) broken.push(`R19: ${count} washes for ${bands.size} values`);
  }
  return broken;
};

const stainsOf = (plan: WashPlan, mixes: readonly Mix[]): (number | null)[] => {
  const ids = new Set(mixes.flatMap((mix) => mix.parts.map((part) => part.paint)));
  return plan.optics.filter((one) => ids.has(one.id)).map((one) => one.properties.staining);
};

const mixesOver = (plan: WashPlan, slots: readonly number[]): Mix[] =>
  plan.mixes.filter((mix) =>
    slots.some((i) => {
      const slot = plan.slots[i];
      return slot?.passage === mix.passage && slot.family === mix.family;
    }),
  );

const liftWhatLifts: Check = (plan) =>
  plan.steps
    .filter((step) => step.kind === 'lift')
    .filter((step) => stainsOf(plan, mixesOver(plan, step.slots)).some((stain) => stain !== 0))
    .map((step) => `R11: ${step.key} lifts staining paint`);

const maskOff: Check = ({ steps }) => {
  const masked = steps.some((step) => step.kind === 'mask');
  const off = steps.findIndex((step) => step.kind === 'unmask');
  if (masked !== off >= 0) return ['R12: masked and not unmasked, or the other way round'];
  if (!masked) return [];
  const broken: string[] = [];
  if (steps[off - 1]?.kind !== 'dry') broken.push('R12: unmasked before the drying check');
  if (steps.slice(off).some((step) => step.kind === 'wash')) broken.push('R12: a wash comes after');
  return broken;
};

const coolAfterDryer: Check = ({ steps }) =>
  steps
    .filter(
      (step) => step.kind === 'dry' && !step.cautions.some((text) => /dryer.*cool/i.test(text)),
    )
    .map((step) => `R14: ${step.key} does not tell her to let the sheet cool`);

const complete: Check = ({ steps, mixes }) => {
  const broken: string[] = [];
  const rows = new Map(mixes.map((mix) => [mix.id, mix]));
  for (const [i, step] of steps.entries()) {
    if (step.n !== i + 1) broken.push(`order: ${step.key} is number ${step.n}`);
    if (step.prompt === '' || step.prompt.length > 160) broken.push(`R15: prompt of ${step.key}`);
    if (step.kind === 'wash' && (step.bands.length === 0 || step.mixes.length === 0)) {
      broken.push(`R15: ${step.key} has no band or no mix`);
    }
    if (step.kind === 'wash' && step.watch === '') broken.push(`R7: ${step.key} says no watch`);
    for (const id of step.mixes)
      if (!rows.get(id)?.parts.length) broken.push(`mix ${id} is missing`);
  }
  if (new Set(steps.map((step) => step.key)).size !== steps.length)
    broken.push('keys: twice the same');
  return broken;
};

const secondWetLayer: Check = (plan) =>
  washSteps(plan)
    .filter((step, n) => n > 0 && step.technique === 'wet-in-wet')
    .filter((step) => {
      const earlier = plan.mixes.filter(
        (mix) => mix.passage === passageOf(step) && mix.wash < Number(step.key.split('/')[2]),
      );
      return stainsOf(plan, earlier).some((stain) => stain === 0);
    })
    .map((step) => `R16: ${step.key} wets paint that lifts`);

const fewPuddles: Check = ({ mixes }, { puddlesPerWash }) => {
  const used = new Map<string, Set<string>>();
  const broken: string[] = [];
  for (const { passage, wash, puddle, parts, id } of mixes) {
    const sum = parts.reduce((all, part) => all + part.parts, 0);
    if (parts.length > 3 || sum > 8) broken.push(`mix ${id}: too many paints or parts`);
    const place = `${passage}/${wash}`;
    if (puddle) used.set(place, (used.get(place) ?? new Set()).add(puddle));
  }
  for (const [place, names] of used) {
    if (names.size > puddlesPerWash) broken.push(`puddles: ${names.size} in ${place}`);
  }
  return broken;
};

const splatterInTexture: Check = ({ steps, slots }) =>
  steps
    .filter((step) => step.kind === 'splatter')
    .filter((step) => step.slots.some((i) => (slots[i]?.smallShapes ?? 0) < 2))
    .map((step) => `R21: ${step.key} in a plain area`);

const whitesStay: Check = ({ steps, slots, paper }) =>
  steps.flatMap((step) =>
    slots.flatMap((slot, i) =>
      slot.reserve && step.after[i]?.[0] !== paper[0] ? [`white ${i} painted in ${step.key}`] : [],
    ),
  );

const lightsLast: Check = ({ steps }) => {
  const at = steps.findIndex((step) => step.kind === 'last-lights');
  if (at < 0) return [];
  const broken: string[] = [];
  const later = steps.slice(at + 1).filter(({ kind }) => kind !== 'dry' && kind !== 'last-look');
  for (const step of later) broken.push(`R13: ${step.key} after the last lights`);
  if (!steps[at]?.cautions.some((text) => /blade/i.test(text))) {
    broken.push('R13: nothing said of the blade');
  }
  return broken;
};

const passagesApart: Check = (plan) => {
  const steps = washSteps(plan);
  const passages = steps.map(passageOf);
  if (new Set(passages).size < 2) return [];
  return steps.flatMap((step, n) => {
    const back = passages[n] !== passages[n - 1] && passages.slice(0, n).includes(passageOf(step));
    return [
      ...(back ? [`R18: ${step.key} goes back to a passage that was left`] : []),
      ...(step.rules.includes('R18') ? [] : [`R18: ${step.key} says nothing of the line`]),
    ];
  });
};

const checks: readonly Check[] = [
  maskFirst,
  lightBeforeDark,
  bigBeforeSmall,
  dryBeforeDry,
  softenInside,
  fewWashes,
  liftWhatLifts,
  maskOff,
  coolAfterDryer,
  complete,
  secondWetLayer,
  fewPuddles,
  splatterInTexture,
  whitesStay,
  lightsLast,
  passagesApart,
];

/**
 * The ordering rules R1..R21 a plan breaks, each with where; empty for a sound one. Not held here: what no plan
 * can show (R4, R6, R10 inside one wash; R13 of splatter, R20 as she paints). Common practice, as listed in the
 * trade notes.
 */
export const brokenRules = (plan: WashPlan, limits: RuleLimits): string[] =>
  checks.flatMap((check) => check(plan, limits));
