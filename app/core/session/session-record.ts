import type { Range } from '../colour/lab.ts';
import type { DryingModel } from '../drying/estimate-drying.ts';
import type { Lesson } from '../drying/learn-pace.ts';
import type { PaperChoice } from '../drying/paper-choice.ts';
import type { Weather } from '../drying/weather.ts';
import type { Wetness } from '../drying/wetness.ts';
import { minuteMs } from '../limits.ts';
import { consistencyIn } from '../paint/former-amounts.ts';
import type { Mix, StepKind, WashPlan } from '../plan/plan.ts';
import { words } from '../words/plan/words.ts';
import type { DryingClock } from './drying-clock.ts';
import { foldSession, orderEvents } from './fold-session.ts';
import { elapsedMs, type SessionEvent } from './session-event.ts';
import type { Trouble } from './trouble.ts';

/** Something noted along the way. `atMinutes` counts from the first event of the session. */
interface TroubleNote {
  readonly atMinutes: number;
  readonly stepKey: string;
  readonly trouble: Trouble;
  readonly wetness: Wetness;
}

interface TextNote {
  readonly atMinutes: number;
  readonly text: string;
}

/** `at` is wall time, ms since 1970. */
export interface PhotoNote {
  readonly photoId: string;
  readonly at: number;
  readonly stepKey: string;
}

interface SessionNotes {
  readonly troubles: readonly TroubleNote[];
  readonly notes: readonly TextNote[];
  readonly photos: readonly PhotoNote[];
  /** Steps tried on a scrap, each once. */
  readonly practised: readonly string[];
}

/** The same trouble told again so soon is the same one, with the wetness put right (own). */
const putRightMinutes = 2;

/** What went wrong, what she noted, which photos she took and what she tried on a scrap, from a log in order. */
function sessionNotes(log: readonly SessionEvent[]): SessionNotes {
  const troubles: TroubleNote[] = [];
  const notes: TextNote[] = [];
  const photos: PhotoNote[] = [];
  const practised = new Set<string>();
  let atMs = 0;
  let last: SessionEvent | null = null;
  for (const event of log) {
    atMs += last ? elapsedMs(last, event) : 0;
    last = event;
    const { what } = event;
    const atMinutes = atMs / minuteMs;
    if (what.kind === 'note' && what.text.trim() !== '') notes.push({ atMinutes, text: what.text });
    if (what.kind === 'photo')
      photos.push({ photoId: what.photoId, at: event.wallMs, stepKey: what.key });
    if (what.kind === 'practise') practised.add(what.key);
    if (what.kind !== 'trouble') continue;
    const { key: stepKey, trouble, wetness } = what;
    const before = troubles.at(-1);
    const putRight =
      before?.trouble === trouble &&
      before.stepKey === stepKey &&
      atMinutes - before.atMinutes < putRightMinutes;
    if (putRight) troubles.pop();
    troubles.push({
      atMinutes: putRight ? before.atMinutes : atMinutes,
      stepKey,
      trouble,
      wetness,
    });
  }
  return { troubles, notes, photos, practised: [...practised] };
}

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
  /** What the clocks said at brush down; null where nothing wet was put down. */
  readonly reckonedShineMinutes: Range | null;
  readonly reckonedDryMinutes: Range | null;
  /** From brush down, as she told; null where she did not. */
  readonly shineMinutes: number | null;
  readonly dryMinutes: number | null;
}

/** What is kept of a session: what she did, how long it took, which mixes. */
export interface SessionRecord extends SessionNotes {
  readonly planId: string;
  /** Wall time, ms since 1970; `finishedAt` is null while it runs. */
  readonly startedAt: number | null;
  readonly finishedAt: number | null;
  readonly totalMinutes: number;
  readonly steps: readonly StepRecord[];
  /** The plan's mixes that hold paint, as she changed them last. */
  readonly mixes: readonly Mix[];
  /** Ids of those she changed. */
  readonly changedMixes: readonly string[];
  readonly weather: Weather;
  readonly paper: PaperChoice;
}

type RecordedPlan = Pick<WashPlan, 'id' | 'steps' | 'mixes'>;

const minutes = (ms: number): number => ms / minuteMs;

/** `lessons`: what sessions before this one had taught the drying clocks. */
export function recordSession(
  plan: RecordedPlan,
  events: readonly SessionEvent[],
  lessons: readonly Lesson[] = [],
  dryingModel?: DryingModel,
): SessionRecord {
  const log = orderEvents(events);
  const state = foldSession(plan.steps, log, lessons, dryingModel);
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
        title: words(step.title),
        done: state.doneKeys.includes(step.key),
        plannedMinutes: step.paintMinutes,
        paintedMinutes: minutes(spent?.paintingMs ?? 0),
        waitedMinutes: minutes(spent?.waitingMs ?? 0),
        plannedShineMinutes: step.shineMinutes,
        plannedDryMinutes: step.dryMinutes,
        reckonedShineMinutes: clock?.reckoned.shineMinutes ?? null,
        reckonedDryMinutes: clock?.reckoned.dryMinutes ?? null,
        shineMinutes: sinceBrushDown(clock, clock?.shineGoneMs),
        dryMinutes: sinceBrushDown(clock, clock?.dryMs),
      };
    }),
    mixes: usedMixes(plan.mixes, log),
    changedMixes: log.flatMap(({ what }) => (what.kind === 'mix-changed' ? [what.mix] : [])),
    weather: state.weather,
    paper: state.paper,
    ...sessionNotes(log),
  };
}

function sinceBrushDown(clock: DryingClock | undefined, atMs: number | null | undefined) {
  return clock && typeof atMs === 'number' ? minutes(atMs - clock.startedMs) : null;
}

function usedMixes(mixes: readonly Mix[], log: readonly SessionEvent[]): Mix[] {
  const changes = new Map<string, Partial<Mix>>();
  for (const { what } of log) {
    if (what.kind !== 'mix-changed') continue;
    const { mix, parts, load, unit } = what;
    changes.set(mix, { parts, load, consistency: consistencyIn(unit, load) });
  }
  return mixes
    .map((mix) => ({ ...mix, ...changes.get(mix.id) }))
    .filter((mix) => mix.parts.length > 0);
}
