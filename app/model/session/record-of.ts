import type { Range } from '../lab.ts';
import type { Mix, StepKind, WashPlan } from '../wash-plan.ts';
import type { DryingClock } from './drying-clock.ts';
import { foldSession, inOrder } from './fold-session.ts';
import type { SessionEvent } from './session-event.ts';

export interface StepRecord {
  readonly key: string;
  readonly n: number;
  readonly kind: StepKind;
  readonly title: string;
  readonly done: boolean;
  readonly plannedMinutes: Range;
  readonly paintedMinutes: number;
  readonly waitedMinutes: number;
  readonly plannedShineMinutes: Range;
  readonly plannedDryMinutes: Range;
  /** From brush down, as she told; null where she did not. */
  readonly shineMinutes: number | null;
  readonly dryMinutes: number | null;
}

/** What is kept of a session: what she did, how long it took, which mixes. */
export interface SessionRecord {
  readonly planId: string;
  /** Wall time, ms since 1970; `finishedAt` is null while it runs. */
  readonly startedAt: number | null;
  readonly finishedAt: number | null;
  readonly totalMinutes: number;
  readonly steps: readonly StepRecord[];
  /** The plan's mixes that hold paint, as she changed them last. */
  readonly mixes: readonly Mix[];
  readonly notes: readonly string[];
}

type RecordedPlan = Pick<WashPlan, 'id' | 'steps' | 'mixes'>;

const minutes = (ms: number): number => ms / 60_000;

export function recordOf(plan: RecordedPlan, events: readonly SessionEvent[]): SessionRecord {
  const log = inOrder(events);
  const state = foldSession(plan.steps, log);
  return {
    planId: plan.id,
    startedAt: state.startedAt,
    finishedAt: state.finishedAt,
    totalMinutes: minutes(state.finishedAtMs ?? state.atMs),
    steps: plan.steps.map((step) => {
      const spent = state.spent[step.key];
      const clock = state.clocks.find((each) => each.key === step.key);
      return {
        key: step.key,
        n: step.n,
        kind: step.kind,
        title: step.title,
        done: state.doneKeys.includes(step.key),
        plannedMinutes: step.paintMinutes,
        paintedMinutes: minutes(spent?.paintingMs ?? 0),
        waitedMinutes: minutes(spent?.waitingMs ?? 0),
        plannedShineMinutes: step.shineMinutes,
        plannedDryMinutes: step.dryMinutes,
        shineMinutes: sinceBrushDown(clock, clock?.shineGoneMs),
        dryMinutes: sinceBrushDown(clock, clock?.dryMs),
      };
    }),
    mixes: usedMixes(plan.mixes, log),
    notes: log.flatMap(({ what }) => (what.kind === 'note' ? [what.text] : [])),
  };
}

function sinceBrushDown(clock: DryingClock | undefined, atMs: number | null | undefined) {
  return clock && typeof atMs === 'number' ? minutes(atMs - clock.startedMs) : null;
}

function usedMixes(mixes: readonly Mix[], log: readonly SessionEvent[]): Mix[] {
  const changes = new Map<string, Partial<Mix>>();
  for (const { what } of log) {
    if (what.kind === 'mix-changed') changes.set(what.mix, { parts: what.parts, load: what.load });
  }
  return mixes
    .map((mix) => ({ ...mix, ...changes.get(mix.id) }))
    .filter((mix) => mix.parts.length > 0);
}
