import { batch, computed, type ReadonlySignal, signal } from '@preact/signals';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import type { KeptAir } from '../../core/drying/conditions.ts';
import { createDryingModel } from '../../core/drying/estimate-drying.ts';
import type { Step } from '../../core/plan/plan.ts';
import {
  beganBefore,
  type DryingHistory,
  dryingHistory,
  type PastSession,
} from '../../core/session/drying-history.ts';
import { type EaselTime, easelTime, hasNoBeginning } from '../../core/session/easel-time.ts';
import { foldSession, ghostTapMs } from '../../core/session/fold-session.ts';
import { airEvents, changedMixEvents } from '../../core/session/initial-events.ts';
import {
  clockSetBackMs,
  type EventBody,
  elapsedMs,
  type LastAct,
  lastAct,
  type Moment,
  type SessionEvent,
} from '../../core/session/session-event.ts';
import type { SessionRecord } from '../../core/session/session-record.ts';
import { standOf } from '../../core/session/session-stand.ts';
import type { SessionState } from '../../core/session/session-state.ts';
import type { Store } from '../../storage/open-store.ts';
import type { OpenSession } from '../../storage/sessions.ts';
import { describeFault } from '../describe-fault.ts';
import type { OwnAirState } from '../own-air.ts';
import { clearDesk, type Desk, type LaidDesk, layDesk } from './desk.ts';
import type { Clock, ScreenWatch } from './device.ts';
import { createLogKeeper } from './log-keeper.ts';
import { createRevisedDesk } from './revised-desk.ts';
import type { SessionLock } from './session-lock.ts';

/** One session at the easel: a log that only grows, and what follows from it. */
export interface Easel {
  readonly desk: ReadonlySignal<Desk | null>;
  readonly session: ReadonlySignal<SessionState>;
  readonly step: ReadonlySignal<Step | null>;
  readonly time: ReadonlySignal<EaselTime>;
  readonly bandsDone: ReadonlySignal<ReadonlySet<number>>;
  readonly running: ReadonlySignal<boolean>;
  readonly record: ReadonlySignal<SessionRecord | null>;
  readonly problem: ReadonlySignal<string | null>;
  readonly savedWord: ReadonlySignal<string>;
  readonly screenStaysOn: ReadonlySignal<boolean | null>;
  /** Reckoned and real drying times of all sessions, this one included. */
  readonly history: ReadonlySignal<DryingHistory>;
  /** The log so far. */
  readonly log: ReadonlySignal<readonly SessionEvent[]>;
  /** Sessions of all paintings that began before this one. */
  readonly earlier: ReadonlySignal<readonly PastSession[]>;
  /** Opens the session under way of a painting, or starts one over its latest plan. */
  open(paintingId: string): Promise<void>;
  /** All sessions of all paintings, the one on the desk included. */
  readonly sessions: ReadonlySignal<readonly PastSession[]>;
  /** Opens a session of a painting for its record, under way or finished: the last one where none is named. */
  lookBack(paintingId: string, sessionId?: string): Promise<void>;
  again(): void;
  leave(): void;
  /** The large button: starts the step, ends it, or ends a pause. */
  goOn(): void;
  stillWet(): void;
  shineGone(): void;
  back(): void;
  pause(): void;
  /** The last tap that can be taken back; null where there is none. */
  readonly lastAct: ReadonlySignal<LastAct | null>;
  takeBack(): void;
  /** Appends what she told in a panel: trouble, practice, a note, work elsewhere. */
  tell(...bodies: readonly EventBody[]): void;
  /** Whether what she taps in this window counts; else another one has the session. */
  readonly inCharge: ReadonlySignal<boolean>;
  takeOver(): void;
  /** The air and the paper from now on, kept for the next session. */
  setAir(air: Pick<KeptAir, 'weather' | 'paper'>): void;
}

interface EaselNeeds {
  readonly store: Store;
  readonly client: AnalysisClient;
  readonly clock: Clock;
  readonly screenWatch: ScreenWatch;
  readonly ownAir: OwnAirState;
  readonly createLock: (onNews: () => void) => SessionLock;
}

export function createEasel(needs: EaselNeeds): Easel {
  const { store, client, clock, screenWatch, ownAir } = needs;
  const log = signal<readonly SessionEvent[]>([]);
  const { laid: onDesk, desk } = createRevisedDesk(log);
  const present = signal(clock.now());
  const problem = signal<string | null>(null);
  const steps = computed(() => desk.value?.plan.steps ?? []);
  /** Sessions of all paintings but the one on the desk, as they stood when it was opened. */
  const others = signal<readonly PastSession[]>([]);
  let record: LaidDesk['recordSession'] | undefined; // there as soon as a desk is
  const earlier = computed(() => others.value.filter(beganBefore(log.value[0])));
  const dryingModel = createDryingModel();
  const taught = computed(() => dryingHistory(earlier.value, dryingModel).lessons);
  const session = computed(() => foldSession(steps.value, log.value, taught.value, dryingModel));
  const step = computed(() => steps.value[session.value.stepIndex] ?? null);
  const time = computed(() => easelTime(session.value, steps.value, present.value, dryingModel));
  const running = computed(() => desk.value !== null && session.value.phase !== 'finished');
  const bandsDone = computed(() => {
    const done = steps.value.filter(({ key }) => session.value.doneKeys.includes(key));
    return new Set(done.flatMap(({ kind, bands }) => (kind === 'wash' ? bands : [])));
  });
  const sessions = computed((): readonly PastSession[] => {
    const { sessionId, paintingId: id, plan } = desk.value ?? {};
    if (sessionId === undefined || id === undefined || !plan) return others.value;
    return [...others.value, { sessionId, paintingId: id, steps: plan.steps, events: log.value }];
  });
  const history = computed(() => dryingHistory(sessions.value, dryingModel));
  let paintingId = '';
  /** Counts comings and goings: what is answered after she left counts no more. */
  let visits = 0;
  let ticking: ReturnType<typeof setInterval> | undefined;
  let lastGoOn: Moment | null = null;

  /** In another window the session went on. */
  const lock = needs.createLock(() => {
    const openDesk = desk.value;
    if (!openDesk) return;
    keeper.load(openDesk.sessionId).then(
      (events) => {
        if (desk.value?.sessionId === openDesk.sessionId && events.length > log.value.length)
          log.value = events;
      },
      () => undefined, // said by the store itself
    );
  });

  const keeper = createLogKeeper({
    store,
    standOf: (id) =>
      desk.value?.sessionId === id ? standOf(session.value, steps.value.length) : undefined,
    onKept: lock.kept,
  });

  /** The log first, the screen from the log; what could not be kept is said and not lost from view. */
  function append(...bodies: readonly EventBody[]): void {
    const openDesk = desk.value;
    if (!openDesk || !lock.inCharge.value) return;
    const moment = clock.now();
    const last = log.value.at(-1);
    const setBackMs = last ? clockSetBackMs(last, moment) : 0;
    const moved: EventBody[] = setBackMs ? [{ kind: 'clock-moved', byMs: setBackMs }] : [];
    const added = [...moved, ...bodies].map((what, i) => ({
      id: crypto.randomUUID(),
      sessionId: openDesk.sessionId,
      seq: (last?.seq ?? -1) + 1 + i,
      planId: openDesk.plan.id,
      ...moment,
      what,
    }));
    log.value = [...log.value, ...added];
    present.value = moment;
    keeper.keep(added);
    if (!running.value) screenWatch.release();
  }

  /** A clock set back between two taps is noted when it is seen, so that a reload knows it too. */
  function tick(): void {
    const before = present.value;
    present.value = clock.now();
    if (running.value && clockSetBackMs(before, present.value)) append();
  }

  function show(laid: LaidDesk | null): void {
    const before = onDesk.value;
    if (laid) record = laid.recordSession;
    batch(() => {
      others.value = laid?.others ?? [];
      log.value = laid?.log ?? [];
      onDesk.value = laid?.desk ?? null;
    });
    clearDesk(before);
  }

  /** Answers whether she is still there when it is laid out: what she left meanwhile is put away. */
  async function take(id: string, find: () => Promise<OpenSession | null>): Promise<boolean> {
    leave();
    const mine = ++visits;
    problem.value = null;
    if (paintingId !== id) show(null);
    paintingId = id;
    try {
      const found = await find();
      const laid = found && (await layDesk({ store, client, keeper }, id, found));
      if (mine === visits) show(laid);
      else clearDesk(laid?.desk ?? null);
    } catch (fault) {
      if (mine !== visits) return false;
      show(null);
      problem.value = describeFault(fault);
    }
    return mine === visits;
  }

  async function open(id: string): Promise<void> {
    if (paintingId !== id || !running.value) {
      const stays = await take(id, () => store.sessionOf(id, crypto.randomUUID()));
      if (!stays) return;
    }
    if (!desk.value) return;
    resume();
    if (log.value.length > 0) return;
    const mine = visits;
    await ownAir.ready;
    if (mine !== visits) return;
    const facts = [
      ...(ownAir.isHers.value ? airEvents(ownAir.air.value) : []),
      ...changedMixEvents(others.value, paintingId, desk.value.plan),
    ];
    // She may have tapped meanwhile.
    append(...(log.value.length === 0 ? [{ kind: 'started' } as const] : []), ...facts);
  }

  async function lookBack(id: string, sessionId?: string): Promise<void> {
    const asked = sessionId ?? (await store.painting(id).catch(() => null))?.sessionIds.at(-1);
    const there = paintingId === id ? desk.value?.sessionId : undefined;
    if (there !== undefined && (asked === undefined || asked === there)) return;
    await take(id, async () => (asked === undefined ? null : store.session(asked)));
  }

  function resume(): void {
    present.value = clock.now();
    clearInterval(ticking);
    ticking = setInterval(tick, 250);
    if (running.value) screenWatch.hold();
    if (desk.value) lock.ask(desk.value.sessionId);
  }

  function leave(): void {
    visits++;
    clearInterval(ticking);
    screenWatch.release();
    lock.release();
  }

  return {
    desk,
    session,
    step,
    time,
    bandsDone,
    running,
    record: computed(() => {
      const [at, make] = [desk.value, record];
      return at && make ? make(at.plan, log.value, taught.value, dryingModel) : null;
    }),
    problem: computed(() => problem.value ?? keeper.problem.value ?? ownAir.problem.value),
    inCharge: lock.inCharge,
    takeOver: lock.takeOver,
    savedWord: computed(() => savedWords[keeper.problem.value ? 'failed' : store.saving.value]),
    screenStaysOn: screenWatch.staysOn,
    history,
    sessions,
    log,
    earlier,
    open,
    lookBack,
    again: () => void open(paintingId),
    leave,
    goOn() {
      const currentStep = step.value;
      const tapped = clock.now();
      // The large button means something else after each tap, so the log can't tell a wet finger's second.
      if (!currentStep || (lastGoOn && elapsedMs(lastGoOn, tapped) < ghostTapMs)) return;
      lastGoOn = tapped;
      const { key, kind } = currentStep;
      if (session.value.phase === 'paused') append({ kind: 'resumed' });
      else if (kind === 'dry') append({ kind: 'dry-now', key }, { kind: 'step-done', key });
      else if (session.value.phase !== 'painting' && hasNoBeginning(currentStep))
        append({ kind: 'step-begun', key }, { kind: 'step-done', key });
      else if (session.value.phase === 'ready') append({ kind: 'step-begun', key });
      else append({ kind: 'step-done', key });
    },
    stillWet: () => step.value && append({ kind: 'still-wet', key: step.value.key }),
    shineGone: () => step.value && append({ kind: 'shine-gone', key: step.value.key }),
    back: () => step.value && append({ kind: 'back', key: step.value.key }),
    pause: () => append({ kind: session.value.phase === 'paused' ? 'resumed' : 'paused' }),
    lastAct: computed(() => lastAct(log.value)),
    takeBack() {
      const act = lastAct(log.value);
      if (act) append({ kind: 'taken-back', events: act.events });
      if (running.value) screenWatch.hold();
    },
    tell: append,
    setAir({ weather, paper }) {
      append({ kind: 'weather', weather }, { kind: 'paper', paper });
      ownAir.set({ weather, paper }).catch(() => undefined); // it says so itself
    },
  };
}

const savedWords = { saved: 'saved', saving: 'saving', failed: 'not saved' } as const;
