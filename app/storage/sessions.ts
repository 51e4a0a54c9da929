import type { Photo } from '../core/decisions/painting.ts';
import type { WashPlan } from '../core/plan/plan.ts';
import type { PastSession } from '../core/session/drying-history.ts';
import { foldSession } from '../core/session/fold-session.ts';
import type { SessionEvent } from '../core/session/session-event.ts';
import { type Stand, standOf } from '../core/session/session-stand.ts';
import { changeCard, wholePainting } from './cards.ts';
import { changeKept } from './paintings.ts';
import { isWholePlan, type KeptReading, unpackReading } from './plans.ts';
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
  /**
   * Adds lines to a log, all or none. A line already there is left as it is. `stand` is where the
   * session stands then, for its card; left out, it is found from the log. Answers false, and
   * keeps nothing, where the session is not here: its painting was discarded, replaced or cleared away.
   */
  appendEvents(events: readonly SessionEvent[], stand?: Stand): Promise<boolean>;
}

const tables: readonly TableName[] = [
  ...(['paintings', 'cards', 'plans', 'readings', 'sessions', 'events'] as const),
];

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
        const found = await boundTo(t, newSessionId);
        const stand = { step: 1, steps: found.plan.steps.length, minutes: null };
        await changeCard(t, paintingId, { stand });
        return found;
      });
      return unpackSession(found);
    },
    session: async (sessionId) =>
      unpackSession(await transactions.read(tables, (t) => boundTo(t, sessionId))),
    events: (sessionId) => transactions.read(['events'], (t) => logOf(t, sessionId)),
    async appendEvents(events, stand) {
      const sessionId = events[0]?.sessionId ?? '';
      const needed = stand ? standTables : tables;
      return transactions.write(`session ${sessionId}`, needed, async (t) => {
        if (!(await t.get('sessions', sessionId))) return false;
        for (const event of events) {
          const there = await t.get('events', [event.sessionId, event.seq]);
          if (!isLine(there)) await t.put('events', event);
          else if (there.id !== event.id) throw new StorageProblem('taken');
        }
        await noteStand(t, sessionId, stand);
        return true;
      });
    },
  };
}

const standTables: readonly TableName[] = ['events', 'sessions', 'cards'];

/** On the card of its painting, where the session is the last one. */
export async function noteStand(
  t: Transaction,
  sessionId: string,
  told: Stand | undefined,
): Promise<void> {
  const session = await t.get('sessions', sessionId);
  const card = session && (await t.get('cards', session.paintingId));
  if (!session || card?.sessionId !== sessionId) return;
  const plan = told ? null : (await t.get('plans', session.planId))?.plan;
  const steps = isWholePlan(plan) ? plan.steps : [];
  const stand = told ?? standOf(foldSession(steps, await logOf(t, sessionId)), steps.length);
  await changeCard(t, session.paintingId, { stand });
}

/** A line that is damaged is passed over: the others still tell what she did. */
export const isLine = (row: SessionEvent | undefined): row is SessionEvent =>
  typeof row?.what === 'object' && typeof row.what?.kind === 'string';

async function logOf(t: Transaction, sessionId: string): Promise<SessionEvent[]> {
  const rows = await t.where('events', 'sessionId', sessionId);
  return rows.filter(isLine).sort((a, b) => a.seq - b.seq);
}

async function boundTo(t: Transaction, sessionId: string) {
  const session = await t.get('sessions', sessionId);
  const row: PlanRow | undefined = session && (await t.get('plans', session.planId));
  const reading = row && (await t.get('readings', row.readingId));
  if (!row || !reading) throw new StorageProblem(session?.planId ? 'damaged' : 'missing');
  if (!isWholePlan(row.plan)) throw new StorageProblem('damaged');
  return { sessionId, plan: row.plan, reading };
}

async function underWay(t: Transaction, paintingId: string) {
  const last = (await wholePainting(t, paintingId))?.sessionIds.at(-1);
  const session = last === undefined ? undefined : await t.get('sessions', last);
  const found = session && (await boundTo(t, session.id).catch(() => null)); // one damaged makes way
  if (!found) return null;
  const { phase } = foldSession(found.plan.steps, await logOf(t, found.sessionId));
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
          if (!isWholePlan(row?.plan)) continue;
          const events = await logOf(t, id);
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

export const lastPhotoName = (sessionId: string): string => `record photo ${sessionId}`;

/** What is being compared in a session: names its photo, which is not in the record yet, and its setting. */
export const comparingName = (sessionId: string): string => `comparing ${sessionId}`;

/** The name of the setting that holds the note being typed in a session. */
export const noteDraftName = (sessionId: string): string => `note draft ${sessionId}`;

const isPhotoKept = (value: unknown): value is PhotoKept =>
  typeof value === 'object' &&
  value !== null &&
  'photoId' in value &&
  typeof value.photoId === 'string' &&
  'key' in value &&
  typeof value.key === 'string';

/** Within a transaction over the settings. */
export async function lastRecordPhotoOf(
  t: Transaction,
  sessionId: string,
): Promise<PhotoKept | null> {
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
    lastRecordPhoto: (sessionId) =>
      transactions.read(['settings'], (t) => lastRecordPhotoOf(t, sessionId)),
  };
}

/** Names of all settings that are kept beside the log of a session. */
export const keepsakeNames = (sessionId: string): readonly string[] => {
  const comparing = comparingName(sessionId);
  return [sessionId, comparing].map(lastPhotoName).concat(noteDraftName(sessionId), comparing);
};

/** The session whose keepsake a setting of that name is; null of any other. */
export const sessionOfKeepsake = (name: string): string | null =>
  /^(?:record photo |note draft |comparing )+(.+)$/.exec(name)?.[1] ?? null;

/** Within a transaction over photos and settings: what is kept of a session beside its log goes. */
export async function forgetKeepsakes(
  t: Transaction,
  sessionId: string,
  log: readonly SessionEvent[],
): Promise<void> {
  for (const { what } of log) if (what.kind === 'photo') await t.remove('photos', what.photoId);
  const last = await lastRecordPhotoOf(t, sessionId);
  if (last) await t.remove('photos', last.photoId);
  await t.remove('photos', comparingName(sessionId));
  for (const name of keepsakeNames(sessionId)) await t.remove('settings', name);
}
