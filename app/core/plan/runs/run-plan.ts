import { labOfReflectance } from '../../colour/spectrum.ts';
import type { PlanWishes } from '../../decisions/plan-wishes.ts';
import { reflectanceOfWashes } from '../../paint/colour-of-washes.ts';
import { consistencyOf } from '../../paint/consistency.ts';
import type { LaidMix } from '../../paint/mix.ts';
import type { Paint } from '../../paint/paint.ts';
import { wetLab } from '../../paint/wet-look.ts';
import { computePxPerMm } from '../../raster/size.ts';
import type { ToneRange } from '../../reading/reading.ts';
import { chooseMarks } from '../details/choose-marks.ts';
import { placeMarks, sparklesOf } from '../details/place-marks.ts';
import type { OrderedWork } from '../order-steps.ts';
import { type Mix, mixesBelow, type WashPlan } from '../plan.ts';
import { nameOfFamily, type PlanFacts } from '../plan-facts.ts';
import { placedRows } from '../steps/apply-steps-to-sheet.ts';
import type { Run, RunInput } from './run.ts';
import { type RunMemory, runWashes } from './run-washes.ts';
import { runTold } from './run-words.ts';

const meanOf = (list: readonly number[]): number =>
  Number((list.reduce((all, each) => all + each, 0) / list.length).toPrecision(3));

/** The mixes at the mean of what lies of them, as run; with the colours they then have over the washes below. */
export function withRunLoads(
  mixes: readonly Mix[],
  runs: readonly Run[],
  paints: readonly Paint[],
): Mix[] {
  const loadOf = ({ id }: Mix, strength: Run['strength'], before: number): number => {
    const run = runs.find((each) => each.mix === id && each.strength === strength);
    return run ? meanOf(run.own) : before;
  };
  const loaded = mixes.map((mix): Mix => {
    const load = loadOf(mix, 'full', mix.load);
    const { weaker } = mix;
    const thin = weaker && loadOf(mix, 'weaker', weaker.load);
    return {
      ...mix,
      load,
      consistency: consistencyOf(load),
      ...(weaker &&
        thin !== undefined && {
          weaker: { ...weaker, load: thin, consistency: consistencyOf(thin) },
        }),
    };
  });
  const lookOf = (laid: readonly LaidMix[]) => {
    const sheet = reflectanceOfWashes(
      laid.map(({ parts, load }) => ({
        paints: parts.flatMap((part) => paints.filter(({ id }) => id === part.paint)),
        parts: parts.map((part) => part.parts),
        load,
      })),
    );
    return { expected: labOfReflectance(sheet), expectedWet: wetLab(sheet) };
  };
  return loaded.map((mix): Mix => {
    if (mix.parts.length === 0) return mix;
    const below = mixesBelow({ mixes: loaded }, mix);
    const { weaker } = mix;
    return {
      ...mix,
      ...lookOf([...below, mix]),
      ...(weaker && {
        weaker: { ...weaker, ...lookOf([...below, { parts: mix.parts, load: weaker.load }]) },
      }),
    };
  });
}

/** The mixes with a word on how each runs over its shapes. */
const withRunNotes = (
  mixes: readonly Mix[],
  runs: readonly Run[],
  across: number,
  paints: readonly Paint[],
  familyName: (family: number) => string,
): Mix[] =>
  mixes.map((mix) => {
    const run = runs.find((each) => each.mix === mix.id && each.strength === 'full');
    const paintName = (id: string): string => paints.find((each) => each.id === id)?.name ?? id;
    const told = run && runTold(run, across, familyName(mix.family), paintName);
    return told ? { ...mix, notes: [told, ...(mix.notes ?? [])] } : mix;
  });

/** Whether a paint is in what meets a mix somewhere. */
export const runsIn = ({ id }: Pick<Paint, 'id'>, runs: readonly Run[]): boolean =>
  runs.some(({ meets }) => meets?.parts.some(({ paint }) => paint === id));

/**
 * What washes of these paints run over; null where the reading does not say how its colours run. `even` are mixes that
 * lie as even as she asked for.
 */
export function runInput(
  {
    reading,
    slots,
    paints,
    passages,
  }: Pick<PlanFacts, 'reading' | 'slots' | 'paints' | 'passages'>,
  range: ToneRange,
  even: ReadonlySet<string>,
): RunInput | null {
  const { squares, raster, sheet } = reading;
  if (!squares) return null;
  const squareMm = squares.sidePx / computePxPerMm(raster, sheet);
  const washes = Math.max(0, ...passages.map((passage) => passage.washes.length));
  return { squares, squareMm, range, slots, washes, paints, even };
}

/**
 * The ordered work with its washes run over the sheet as the picture's colours do, in strength and hue; as it is where
 * the reading does not say how they run.
 */
export function runPlan(
  facts: PlanFacts,
  range: ToneRange,
  { mixes, steps }: Pick<OrderedWork, 'mixes' | 'steps'>,
  wishes: PlanWishes,
  memory?: RunMemory,
): Pick<WashPlan, 'mixes' | 'steps' | 'runs'> {
  const { paints } = facts;
  const even = new Set(
    (wishes.edits ?? []).flatMap((edit) => (edit.kind === 'mix' ? [edit.mix] : [])),
  );
  const input = runInput(facts, range, even);
  if (!input) return { mixes, steps };
  const { squares } = input;
  const now = new Map(mixes.map((mix) => [mix.id, mix]));
  const placed = placedRows(facts).map((row) => ({ ...row, mix: now.get(row.mix.id) ?? row.mix }));
  const { runs, after, looks, sheet } = runWashes(steps, placed, input, memory);
  const loaded = withRunLoads(mixes, runs, paints);
  const laid = new Set(runs.map(({ mix }) => mix));
  const marks = chooseMarks({
    shapes: facts.reading.details?.shapes ?? [],
    underneathOf: ({ rows, shares }) => sheet.underneathOf(rows, shares),
    mixes: loaded.filter(({ id }) => laid.has(id)),
    spectraOf: (mix) => sheet.spectraOf(mix),
    range,
  });
  const run = steps.map((step, n) => ({ ...step, after: after[n], look: looks[n] }));
  return {
    mixes: withRunNotes(loaded, runs, squares.across, paints, (family) =>
      nameOfFamily(facts, family),
    ),
    steps: placeMarks(run, [...marks, ...sparklesOf(facts, range)], loaded, facts),
    runs,
  };
}
