import { type Lab, labOfRgb, rgbOfLab } from '../colour/lab.ts';
import { labOfReflectance } from '../colour/spectrum.ts';
import { layOver, paintLayer } from '../paint/layer.ts';
import type { Part } from '../paint/mix.ts';
import { wetLab } from '../paint/wet-look.ts';
import { mixSaid } from '../plan/paint-name-in.ts';
import { leavesWet, type Mix, type Step, surfaceOf, type WashPlan } from '../plan/plan.ts';
import { withCautions } from '../plan/steps/step-cautions.ts';
import type { ColourSquares } from '../reading/colour-squares.ts';
import type { Reading } from '../reading/reading.ts';
import type { Said } from '../words/plan/words.ts';
import type { Mending } from './comparison.ts';
import { laidBy, layersOn, spectraOf, stacked, staysOf, timesFor } from './mend.ts';
import { placedShape } from './placed-shape.ts';
import { isOfNextWash, type TakenAdvice } from './taken-advice.ts';

const less = (one: Lab, other: Lab): Lab => [
  one[0] - other[0],
  one[1] - other[1],
  one[2] - other[2],
];
const more = (one: Lab, other: Lab, times = 1): Lab => [
  one[0] + times * other[0],
  one[1] + times * other[1],
  one[2] + times * other[2],
];

/** By how much the slot differs from what was planned of it after every later step, the measured sheet being its ground. */
function shiftsLater(plan: WashPlan, taken: TakenAdvice): (n: number) => Lab {
  const { mending, slot, measured, expected, predicted, parts, load } = taken;
  const from = plan.steps.find(({ key }) => key === taken.after)?.n ?? 0;
  const constant = less(predicted, expected);
  if (mending === 'soften-edge' || mending === 'sharpen-edge') return () => [0, 0, 0];
  if (mending === 'opaque-white' || mending === 'leave-as-is') return () => constant;
  const surface = surfaceOf(plan);
  const layers = layersOn(plan, slot, from);
  const times = timesFor(plan, layers, measured[0]);
  const planned = timesFor(plan, layers, expected[0]);
  const lifted = Math.max(planned, times * staysOf(plan, layers));
  const real = stacked(plan, layers, mending === 'lift' ? lifted : times);
  const meant = stacked(plan, layers, planned);
  const lay = (over: Float64Array, paints: readonly Part[], ml: number): void => {
    const { K, S } = spectraOf(plan, paints);
    layOver(paintLayer(K, S, ml), over, over);
  };
  if (!isOfNextWash(mending) && load > 0) lay(real, parts, load);
  const shifts = new Map<number, Lab>();
  for (const step of plan.steps) {
    if (step.n <= from) continue;
    const laid = laidBy(plan, step, slot);
    if (laid) {
      lay(real, laid.parts, step.key === taken.before && isOfNextWash(mending) ? load : laid.load);
      lay(meant, laid.parts, laid.load);
    }
    const isIt = step.key === taken.before && isOfNextWash(mending);
    const shift = less(labOfReflectance(real, surface), labOfReflectance(meant, surface));
    shifts.set(step.n, isIt ? less(predicted, step.after[slot]) : shift);
  }
  return (n) => shifts.get(n) ?? constant;
}

/** A step with the rows of an advice, and its slot as far as they are of it, looking otherwise. */
function shifted(
  step: Step,
  taken: TakenAdvice,
  squares: ColourSquares | undefined,
  by: Lab,
): Step {
  const { slot, rows } = taken;
  const own = squares?.slots.reduce((sum, each) => sum + (each === slot ? 1 : 0), 0) ?? 0;
  const covered = rows.length > 0 && own > 0 ? rows.length / own : 1;
  const after = step.after.map((lab, i) => (i === slot ? more(lab, by, covered) : lab));
  if (!step.look || !squares) return { ...step, after };
  const look = step.look.slice();
  const seenRows =
    rows.length > 0 ? rows : squares.slots.flatMap((each, row) => (each === slot ? [row] : []));
  for (const row of seenRows) {
    const lab = labOfRgb([look[3 * row], look[3 * row + 1], look[3 * row + 2]]);
    look.set(rgbOfLab(more(lab, by)), 3 * row);
  }
  return { ...step, after, look };
}

/** What is done, as a prompt at the easel. */
function promptOf(taken: TakenAdvice, plan: WashPlan, reading: Reading): Said {
  const { mending, parts, consistency } = taken;
  const placed = placedShape(taken.slot, taken.at, plan, reading);
  switch (mending) {
    case 'glaze':
    case 'lay-missing': {
      const mix = mixSaid(plan, parts);
      return { say: `mend/${mending}`, placed, mix, ...(consistency && { like: consistency }) };
    }
    case 'lift':
    case 'opaque-white':
    case 'soften-edge':
    case 'sharpen-edge':
      return { say: `mend/${mending}`, placed };
    default:
      return { say: 'mend/otherwise', placed };
  }
}

const kinds: Partial<Record<Mending, Pick<Step, 'kind' | 'technique'>>> = {
  glaze: { kind: 'wash', technique: 'glaze' },
  'lay-missing': { kind: 'wash', technique: 'wet on dry' },
  lift: { kind: 'lift', technique: 'lifting' },
  'opaque-white': { kind: 'last-lights', technique: 'opaque white' },
};
const otherKind = { kind: 'details', technique: 'none' } as const;

/** The puddle of an advice: one of the plan's letters where it has the same parts, else the next. */
function mixFor(taken: TakenAdvice, plan: WashPlan, id: string): Mix | null {
  const { slot, parts, load, consistency, expected, predicted } = taken;
  const own = plan.slots[slot];
  if (!own || parts.length === 0 || consistency === null) return null;
  const same = plan.mixes.find((mix) => JSON.stringify(mix.parts) === JSON.stringify(parts));
  const letters = new Set(plan.mixes.map(({ puddle }) => puddle));
  const free = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].find((letter) => !letters.has(letter)) ?? null;
  const ofSlot = plan.mixes.filter(
    ({ family, passage }) => family === own.family && passage === own.passage,
  );
  const from = plan.steps.find(({ key }) => key === taken.after)?.n ?? 0;
  const ground = stacked(plan, layersOn(plan, slot, from), 1);
  const { K, S } = spectraOf(plan, parts);
  layOver(paintLayer(K, S, load), ground, ground);
  return {
    ...{ id, parts, load, consistency, target: expected, expected: predicted },
    puddle: same?.puddle ?? free,
    wash: Math.max(1, ...ofSlot.map(({ wash }) => wash)),
    ...{ passage: own.passage, family: own.family },
    expectedWet: wetLab(ground, surfaceOf(plan)),
  };
}

/** With one more step before another, and a drying check where it is left wet; all numbered anew. */
function inserted(plan: WashPlan, step: Step, before: string | null): Step[] {
  const place = plan.steps.findIndex(({ key }) => key === before);
  const at = place < 0 ? plan.steps.length : place;
  const next = plan.steps[at];
  const check = plan.steps.find(({ kind }) => kind === 'dry');
  const waits = leavesWet(step) && next && next.kind !== 'dry' && next.kind !== 'last-look';
  const dry =
    waits && check
      ? [
          {
            ...check,
            key: `dry/${step.key}`,
            after: step.after,
            ...(step.look && { look: step.look }),
            ...(step.marks && { marks: step.marks }),
          },
        ]
      : [];
  const all = [...plan.steps.slice(0, at), step, ...dry, ...plan.steps.slice(at)];
  return all.map((each, i) => ({ ...each, n: i + 1 }));
}

/** One piece of advice in a plan. A place that is not in it changes nothing. */
function withAdvice(plan: WashPlan, reading: Reading, taken: TakenAdvice, nth: number): WashPlan {
  const base = plan.steps.find(({ key }) => key === taken.after);
  const own = plan.slots[taken.slot];
  if (!base || !own) return plan;
  const { squares } = reading;
  const shiftAt = shiftsLater(plan, taken);
  const place = plan.steps.find(({ key }) => key === taken.before);
  const from = place?.n ?? Number.POSITIVE_INFINITY;
  const later = plan.steps.map((step) =>
    step.n >= from ? shifted(step, taken, squares, shiftAt(step.n)) : step,
  );
  if (isOfNextWash(taken.mending)) {
    const note: Said = {
      say: 'mend/next-wash',
      placed: placedShape(taken.slot, taken.at, plan, reading),
      how: taken.mending === 'stronger-next' ? 'stronger' : 'weaker',
      ...(taken.consistency && { like: taken.consistency }),
    };
    const steps = later.map((step) =>
      step.key === taken.before ? { ...step, notes: [...(step.notes ?? []), note] } : step,
    );
    return { ...plan, steps };
  }
  const key = `mend/${own.passage}/${nth}`;
  const mix = mixFor(taken, plan, `mend-${nth}`);
  const mixes = mix ? [...plan.mixes, mix] : plan.mixes;
  const { brush: _, board: __, ...bare } = base;
  const ground = plan.steps.findLast((step) => step.n < from) ?? base;
  const { look, marks } = ground;
  const { notes: _n, touches: _t, consequence: _c, alsoHappens: _a, ...plain } = bare;
  const step: Step = {
    ...plain,
    ...(kinds[taken.mending] ?? otherKind),
    ...{
      key,
      title: { say: 'title/mend', mending: taken.mending },
      watch: '',
      soften: '',
      rules: [],
    },
    ...{
      bands: [own.band],
      families: [own.family],
      slots: [taken.slot],
      mixes: mix ? [mix.id] : [],
    },
    ...{ prompt: promptOf(taken, plan, reading), paper: 'bone dry', paintMinutes: [2, 6] },
    ...(mix && base.brush && { brush: base.brush }),
    after: ground.after,
    ...(look && { look }),
    ...(marks && { marks }),
  };
  const done = shifted(step, taken, squares, less(taken.predicted, taken.expected));
  const [cared] = withCautions([done], { ...plan, mixes, weather: { hairDryer: false } });
  return {
    ...plan,
    mixes,
    steps: inserted({ ...plan, steps: later }, cared ?? done, taken.before),
  };
}

/** The plan of this sheet with all the advice she took, in order: a revision that names what it is based on. */
export function mendedPlan(
  plan: WashPlan,
  reading: Reading,
  advice: readonly TakenAdvice[],
): WashPlan {
  const mended = advice.reduce(
    (before, taken, n) => withAdvice(before, reading, taken, n + 1),
    plan,
  );
  return mended === plan ? plan : { ...mended, basedOn: plan.id };
}
