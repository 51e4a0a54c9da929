import type { Photo } from '../core/decisions/painting.ts';
import type { WashPlan } from '../core/plan/plan.ts';
import type { PastSession } from '../core/session/drying-history.ts';
import { foldSession } from '../core/session/fold-session.ts';
import type { SessionEvent } from '../core/session/session-event.ts';
import { changeKept } from './paintings.ts';
import { type KeptReading, unpackReading } from './plans.ts';
import type { PlanRow, TableName, Transaction } from './schema.ts';
import { StorageProblem } from './storage-problem.ts';
import type { Transactions } from './transactions.ts';

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

export function createSessions(transactions: Transactions, readTimeMs: () => number): Sessions {
  return {
    async sessionOf(paintingId, newSessionId) {
      const found = await transactions.write(`session ${paintingId}`, tables, async (t) => {
        const running = await underWay(t, paintingId);
        if (running) return running;
        const painting = await changeKept(t, paintingId, readTimeMs(), (before) => ({
          ...before,
          sessionIds: [...before.sessionIds, newSessionId],
        }));
        const planId = painting.planIds.at(-1) ?? '';
        await t.put('sessions', { id: newSessionId, paintingId, planId });
        return boundTo(t, newSessionId);
      });
      return unpackSession(found);
    },
    session: async (sessionId) =>
      unpackSession(await transactions.read(tables, (t) => boundTo(t, sessionId))),
    events: (sessionId) => transactions.read(['events'], (t) => logOf(t, sessionId)),
    appendEvents: (events) =>
      transactions.write(`session ${events[0]?.sessionId}`, ['events'], async (t) => {
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

async function unpackSession(found: Awaited<ReturnType<typeof boundTo>>): Promise<OpenSession> {
  const { sessionId, plan, reading } = found;
  return { sessionId, plan, kept: await unpackReading(reading) };
}

export interface PastSessions {
  /** Every session of every painting on this device, in no order: what her drying pace is learned from. */
  pastSessions(): Promise<readonly PastSession[]>;
}

const pastSessionTables: readonly TableName[] = ['sessions', 'plans', 'events'];

export function createPastSessions(transactions: Transactions): PastSessions {
  return {
    pastSessions: () =>
      transactions.read(pastSessionTables, async (t) => {
        const found: PastSession[] = [];
        for (const { id, paintingId, planId } of await t.all('sessions')) {
          const row = await t.get('plans', planId);
          if (!row) continue;
          const events = await t.where('events', 'sessionId', id);
          found.push({ sessionId: id, paintingId, steps: row.plan.steps, events });
        }
        return found;
      }),
  };
}

/** A photo whose bytes are kept and whose line in the log comes next. */
interface PhotoKept {
  readonly photoId: string;
  /** Key of the step it was taken at. */
  readonly key: string;
}

export interface SessionKeepsakes {
  /** The bytes of a photo for the record, and beside them that it waits for its line in the log. */
  keepRecordPhoto(sessionId: string, photo: Photo, key: string): Promise<void>;
  /** The photo kept last in a session, whether it has its line by now or not; null before the first. */
  lastRecordPhoto(sessionId: string): Promise<PhotoKept | null>;
}

const lastPhotoName = (sessionId: string): string => `record photo ${sessionId}`;

/** The name of the setting that holds the note being typed in a session. */
export const noteDraftName = (sessionId: string): string => `note draft ${sessionId}`;

const isPhotoKept = (value: unknown): value is PhotoKept =>
  typeof value === 'object' &&
  value !== null &&
  'photoId' in value &&
  typeof value.photoId === 'string' &&
  'key' in value &&
  typeof value.key === 'string';

async function lastOf(t: Transaction, sessionId: string): Promise<PhotoKept | null> {
  const kept = (await t.get('settings', lastPhotoName(sessionId)))?.value;
  return isPhotoKept(kept) ? kept : null;
}

export function createSessionKeepsakes(transactions: Transactions): SessionKeepsakes {
  return {
    keepRecordPhoto: (sessionId, photo, key) =>
      transactions.write(`record photo ${sessionId}`, ['photos', 'settings'], async (t) => {
        const value: PhotoKept = { photoId: photo.id, key };
        await t.put('photos', photo);
        await t.put('settings', { id: lastPhotoName(sessionId), value });
      }),
    lastRecordPhoto: (sessionId) => transactions.read(['settings'], (t) => lastOf(t, sessionId)),
  };
}

/** Within a transaction over photos and settings: what is kept of a session beside its log goes. */
export async function forgetKeepsakes(
  t: Transaction,
  sessionId: string,
  log: readonly SessionEvent[],
): Promise<void> {
  for (const { what } of log) if (what.kind === 'photo') await t.remove('photos', what.photoId);
  const last = await lastOf(t, sessionId);
  if (last) await t.remove('photos', last.photoId);
  await t.remove('settings', lastPhotoName(sessionId));
  await t.remove('settings', noteDraftName(sessionId));
}
