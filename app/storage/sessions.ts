import { foldSession } from '../model/session/fold-session.ts';
import type { SessionEvent } from '../model/session/session-event.ts';
import type { WashPlan } from '../model/wash-plan.ts';
import type { Keeper } from './keeper.ts';
import { changeKept } from './paintings.ts';
import { type KeptReading, unpackReading } from './plans.ts';
import type { PlanRow, TableName } from './schema.ts';
import { StorageProblem } from './storage-problem.ts';
import type { Transaction } from './tables.ts';

/** A session with what it is bound to: plan and reading stay as they were when it began. */
export interface OpenSession {
  readonly sessionId: string;
  readonly plan: WashPlan;
  readonly kept: KeptReading;
}

export interface Sessions {
  /**
   * The session under way of a painting, or a new one of that id over its latest plan. Of two
   * windows asking at once both get the same.
   */
  sessionOf(paintingId: string, newSessionId: string): Promise<OpenSession>;
  /** A session of the past or under way. */
  session(sessionId: string): Promise<OpenSession>;
  /** The whole log, in order. */
  events(sessionId: string): Promise<readonly SessionEvent[]>;
  /** Adds lines to a log, all or none. A line already there is left as it is. */
  appendEvents(events: readonly SessionEvent[]): Promise<void>;
}

const tables: readonly TableName[] = ['paintings', 'plans', 'readings', 'sessions', 'events'];

export function createSessions(keeper: Keeper, now: () => number): Sessions {
  return {
    async sessionOf(paintingId, newSessionId) {
      const found = await keeper.write(`session ${paintingId}`, tables, async (t) => {
        const running = await underWay(t, paintingId);
        if (running) return running;
        const painting = await changeKept(t, paintingId, now(), (before) => ({
          ...before,
          sessionIds: [...before.sessionIds, newSessionId],
        }));
        const planId = painting.planIds.at(-1) ?? '';
        await t.put('sessions', { id: newSessionId, paintingId, planId });
        return boundTo(t, newSessionId);
      });
      return unpacked(found);
    },
    session: async (sessionId) => unpacked(await keeper.read(tables, (t) => boundTo(t, sessionId))),
    events: (sessionId) => keeper.read(['events'], (t) => logOf(t, sessionId)),
    appendEvents: (events) =>
      keeper.write(`session ${events[0]?.sessionId}`, ['events'], async (t) => {
        for (const event of events) {
          const there = await t.get('events', [event.sessionId, event.seq]);
          if (there && there.id !== event.id) throw new StorageProblem('taken');
          if (!there) await t.put('events', event);
        }
      }),
  };
}

async function logOf(t: Transaction, sessionId: string): Promise<SessionEvent[]> {
  return (await t.where('events', 'sessionId', sessionId)).sort((a, b) => a.seq - b.seq);
}

async function boundTo(t: Transaction, sessionId: string) {
  const session = await t.get('sessions', sessionId);
  const row: PlanRow | undefined = session && (await t.get('plans', session.planId));
  const reading = row && (await t.get('readings', row.readingId));
  if (!row || !reading) throw new StorageProblem('missing');
  return { sessionId, plan: row.plan, reading };
}

async function underWay(t: Transaction, paintingId: string) {
  const painting = await t.get('paintings', paintingId);
  const last = painting?.sessionIds.at(-1);
  if (last === undefined || !(await t.get('sessions', last))) return null;
  const found = await boundTo(t, last);
  const { phase } = foldSession(found.plan.steps, await logOf(t, last));
  return phase === 'finished' ? null : found;
}

async function unpacked(found: Awaited<ReturnType<typeof boundTo>>): Promise<OpenSession> {
  const { sessionId, plan, reading } = found;
  return { sessionId, plan, kept: await unpackReading(reading) };
}
