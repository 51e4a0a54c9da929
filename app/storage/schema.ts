import type { IDBPDatabase, IDBPTransaction } from 'idb';
import type { Painting, Photo } from '../core/decisions/painting.ts';
import { withRenamedPaints, withRenamedTicks } from '../core/paint/renamed-paints.ts';
import type { WashPlan } from '../core/plan/plan.ts';
import type { Reading } from '../core/reading/reading.ts';
import { foldSession } from '../core/session/fold-session.ts';
import type { SessionEvent } from '../core/session/session-event.ts';
import { type Stand, standOf } from '../core/session/session-stand.ts';
import { type CardRow, cardOf, damagedCard, isWhole } from './card-row.ts';

/** Bytes as kept: deflated where the browser can (RFC 1951), plain elsewhere. */
interface PackedBytes {
  readonly packing: 'deflate-raw' | 'plain';
  readonly bytes: ArrayBuffer;
}

/** An own copy: the buffer of a view may be larger, or belong to someone else. */
function copyBytes(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  return new Uint8Array(bytes);
}

const pipeBytes = (
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
) => new Response(new Blob([bytes]).stream().pipeThrough(stream)).arrayBuffer();

/** Safari before 16.4 has no CompressionStream, and some browsers have it without 'deflate-raw'. */
function createDeflater(): CompressionStream | null {
  try {
    return new CompressionStream('deflate-raw');
  } catch {
    return null; // kept plain instead
  }
}

export async function packBytes(bytes: Uint8Array): Promise<PackedBytes> {
  const stream = createDeflater();
  if (!stream) return { packing: 'plain', bytes: copyBytes(bytes).buffer };
  return { packing: 'deflate-raw', bytes: await pipeBytes(copyBytes(bytes), stream) };
}

export async function unpackBytes({ packing, bytes }: PackedBytes): Promise<Uint8Array> {
  if (packing === 'plain') return new Uint8Array(bytes);
  const stream = new DecompressionStream('deflate-raw');
  return new Uint8Array(await pipeBytes(new Uint8Array(bytes), stream));
}

/** A plan revision: never changed once kept. `key` says what it was made from. */
export interface PlanRow {
  readonly id: string;
  readonly paintingId: string;
  readonly key: string;
  /** Id of the reading it was made over. */
  readonly readingId: string;
  readonly createdAt: number;
  readonly plan: WashPlan;
}

/** A reading with its slot map and the cropped reference: derived, kept so that reopening is at once. */
export interface ReadingRow {
  readonly id: string;
  readonly paintingId: string;
  readonly createdAt: number;
  readonly reading: Reading;
  readonly slotMap: PackedBytes;
  /** Readings kept before it was handed over do not have it. */
  readonly lightnessMap?: PackedBytes;
  readonly referenceJpeg: ArrayBuffer;
}

interface SessionRow {
  readonly id: string;
  readonly paintingId: string;
  readonly planId: string;
}

/** What is kept where. Pictures are ArrayBuffers: WebKit's private windows refuse Blobs. */
interface Rows {
  photos: Photo;
  paintings: Painting;
  cards: CardRow;
  thumbnails: { readonly id: string; readonly jpeg: ArrayBuffer };
  plans: PlanRow;
  readings: ReadingRow;
  sessions: SessionRow;
  events: SessionEvent;
  settings: { readonly id: string; readonly value: unknown };
}

export type TableName = keyof Rows;

/** Fields that rows can be looked up by. */
type LookUpField = 'paintingId' | 'sessionId';

export type Migration = (
  database: IDBPDatabase<unknown>,
  transaction: IDBPTransaction<unknown, string[], 'versionchange'>,
) => void | Promise<void>;

/** Only ever appended to: its length is the version of the database. */
export const MIGRATIONS: readonly Migration[] = [
  (database) => {
    for (const name of ['photos', 'paintings', 'thumbnails', 'settings'])
      database.createObjectStore(name, { keyPath: 'id' });
    for (const name of ['plans', 'readings', 'sessions']) {
      const table = database.createObjectStore(name, { keyPath: 'id' });
      table.createIndex('paintingId', 'paintingId');
    }
    // The key itself keeps two windows from writing the same line of a log.
    const events = database.createObjectStore('events', { keyPath: ['sessionId', 'seq'] });
    events.createIndex('sessionId', 'sessionId');
  },
  // Two built-in paints were called by a wrong pigment: what she decided and kept names them as they are called now.
  async (_database, transaction) => {
    const paintings = transaction.objectStore('paintings');
    for (const row of await paintings.getAll())
      await paintings.put({ ...row, decisions: withRenamedPaints(row.decisions) });
    const settings = transaction.objectStore('settings');
    for (const row of await settings.getAll()) {
      const renamed = renamings.get(row.id);
      if (renamed) await settings.put({ ...row, value: renamed(row.value) });
    }
  },
  // What the first screen shows of a painting has a small row of its own.
  async (database, transaction) => {
    const cards = database.createObjectStore('cards', { keyPath: 'id' });
    const pictured = new Set(await transaction.objectStore('thumbnails').getAllKeys());
    for (const row of await transaction.objectStore('paintings').getAll()) {
      const card = isWhole(row) ? cardOf(row, undefined) : damagedCard(row);
      const stand = card.sessionId === null ? null : await standKept(transaction, card.sessionId);
      await cards.put({ ...card, stand, pictureAt: pictured.has(row.id) ? 0 : null });
    }
  },
];

/** Where a session stands by its plan and its log; null where one of them can't be read. */
async function standKept(
  transaction: Parameters<Migration>[1],
  sessionId: string,
): Promise<Stand | null> {
  const session = await transaction.objectStore('sessions').get(sessionId);
  const row = session?.planId && (await transaction.objectStore('plans').get(session.planId));
  const log = await transaction.objectStore('events').index('sessionId').getAll(sessionId);
  try {
    return standOf(foldSession(row.plan.steps, log), row.plan.steps.length);
  } catch {
    return null; // damaged: its card does without
  }
}

/** Settings that name paints by id. */
const renamings: ReadonlyMap<string, (stored: unknown) => unknown> = new Map([
  ['paint box', withRenamedTicks],
  ['paint draft', withRenamedPaints],
  ['paint measure', withRenamedPaints],
]);

export type RowKey = string | [string, number];

/** What may be done within one transaction. Await nothing else in it: the database closes it. */
export interface Transaction {
  get<N extends TableName>(table: N, key: RowKey): Promise<Rows[N] | undefined>;
  all<N extends TableName>(table: N): Promise<Rows[N][]>;
  where<N extends TableName>(table: N, field: LookUpField, value: string): Promise<Rows[N][]>;
  put<N extends TableName>(table: N, row: Rows[N]): Promise<void>;
  remove(table: TableName, key: RowKey): Promise<void>;
  /** All rows of a table go. */
  clear(table: TableName): Promise<void>;
}

export type Access = 'readonly' | 'readwrite';

/** Somewhere rows are kept. A transaction is all or nothing, and done for good when `run` answers. */
export interface Tables {
  /** False where everything is forgotten with the window. */
  readonly keeps: boolean;
  /** `work` may be run a second time when the connection was cut before the first could count. */
  run<T>(
    access: Access,
    tables: readonly TableName[],
    work: (transaction: Transaction) => Promise<T>,
  ): Promise<T>;
  close(): void;
}
