import type { IDBPDatabase, IDBPTransaction } from 'idb';
import type { Painting, Photo } from '../model/painting.ts';
import type { Reading } from '../model/reading.ts';
import type { SessionEvent } from '../model/session/session-event.ts';
import type { WashPlan } from '../model/wash-plan.ts';
import type { PackedBytes } from './packed-bytes.ts';

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

export interface SessionRow {
  readonly id: string;
  readonly paintingId: string;
  readonly planId: string;
}

/** What is kept where. Pictures are ArrayBuffers: WebKit's private windows refuse Blobs. */
export interface Rows {
  photos: Photo;
  paintings: Painting;
  thumbnails: { readonly id: string; readonly jpeg: ArrayBuffer };
  plans: PlanRow;
  readings: ReadingRow;
  sessions: SessionRow;
  events: SessionEvent;
  settings: { readonly id: string; readonly value: unknown };
}

export type TableName = keyof Rows;

/** Fields that rows can be looked up by. */
export type LookUpField = 'paintingId' | 'sessionId';

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
];
