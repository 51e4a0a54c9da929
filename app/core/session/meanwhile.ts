import type { Step, StepKind } from '../plan/plan.ts';
import type { Border } from '../reading/reading.ts';
import type { SessionState } from './session-state.ts';

interface Meanwhile {
  /** Keys of steps that can be done now: nothing they touch is wet, or lies beside what is wet. */
  readonly elsewhere: readonly string[];
  /** The step whose puddles can be mixed meanwhile; null when nothing is left to mix. */
  readonly mixFor: string | null;
}

type PlacedStep = Pick<Step, 'key' | 'kind' | 'slots' | 'mixes'>;

/** Work on the paper itself that is bound to a place. */
const placed: readonly StepKind[] = ['wash', 'lift', 'details', 'accents', 'last-lights'];

/**
 * What can be done while the sheet dries: a wet wash must not be touched, and no wash is laid against
 * it, for the two would run into one another; nor before what belongs under it (light before dark).
 */
export function findMeanwhile(
  steps: readonly PlacedStep[],
  borders: readonly Pick<Border, 'a' | 'b' | 'lengthMm'>[],
  state: SessionState,
): Meanwhile {
  const undone = steps.filter(({ key }) => !state.doneKeys.includes(key));
  const later = undone.filter(({ key }) => indexOf(steps, key) > state.stepIndex);
  const closed = wetAndBeside(steps, borders, state);
  const isFree = ({ key, kind, slots }: PlacedStep): boolean =>
    placed.includes(kind) &&
    slots.length > 0 &&
    !slots.some((slot) => closed.has(slot)) &&
    !undone.some(
      (before) =>
        placed.includes(before.kind) &&
        indexOf(steps, before.key) < indexOf(steps, key) &&
        before.slots.some((slot) => slots.includes(slot)),
    );
  return {
    elsewhere: later.filter(isFree).map(({ key }) => key),
    mixFor: later.find(({ kind, mixes }) => kind !== 'puddles' && mixes.length > 0)?.key ?? null,
  };
}

const indexOf = (steps: readonly PlacedStep[], key: string): number =>
  steps.findIndex((step) => step.key === key);

function wetAndBeside(
  steps: readonly PlacedStep[],
  borders: readonly Pick<Border, 'a' | 'b' | 'lengthMm'>[],
  { clocks }: SessionState,
): ReadonlySet<number> {
  const wetKeys = new Set(clocks.filter(({ dryMs }) => dryMs === null).map(({ key }) => key));
  const wet = new Set(steps.flatMap(({ key, slots }) => (wetKeys.has(key) ? slots : [])));
  const beside = borders
    .filter(({ lengthMm }) => lengthMm > 0)
    .flatMap(({ a, b }) => [...(wet.has(a) ? [b] : []), ...(wet.has(b) ? [a] : [])]);
  return new Set([...wet, ...beside]);
}
