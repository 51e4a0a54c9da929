import type { Photo } from '../model/painting.ts';
import type { SessionEvent } from '../model/session/session-event.ts';
import type { Keeper } from './keeper.ts';
import type { Transaction } from './tables.ts';

/** A photo whose bytes are kept and whose line in the log comes next. */
export interface PhotoKept {
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

export function createSessionKeepsakes(keeper: Keeper): SessionKeepsakes {
  return {
    keepRecordPhoto: (sessionId, photo, key) =>
      keeper.write(`record photo ${sessionId}`, ['photos', 'settings'], async (t) => {
        const value: PhotoKept = { photoId: photo.id, key };
        await t.put('photos', photo);
        await t.put('settings', { id: lastPhotoName(sessionId), value });
      }),
    lastRecordPhoto: (sessionId) => keeper.read(['settings'], (t) => lastOf(t, sessionId)),
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
