import { parseKeptAir } from '../../core/drying/conditions.ts';
import { easelSettingsOf } from '../../core/session/easel-settings.ts';
import { isWhole } from '../card-row.ts';
import { isWholePlan } from '../plans.ts';
import type { PlanRow, ReadingRow, Transaction } from '../schema.ts';
import { isLine, lastRecordPhotoOf, noteDraftName } from '../sessions.ts';
import type { PaintingFile } from './row-schemas.ts';

/** All that is kept of one painting but the bytes of its photos. */
export interface KeptPainting {
  readonly file: PaintingFile;
  readonly plans: readonly PlanRow[];
  readonly readings: readonly ReadingRow[];
  /** The reference first, then those of the record. */
  readonly photoIds: readonly string[];
}

/**
 * Within a transaction over all that is kept of paintings. Null where the painting is gone or can't be read. Plans and
 * readings that are damaged stay out: they are made again.
 */
export async function readPaintingRows(t: Transaction, id: string): Promise<KeptPainting | null> {
  const painting: unknown = await t.get('paintings', id);
  if (!isWhole(painting)) return null;
  const thumbnail = (await t.get('thumbnails', id))?.jpeg;
  const plans = (await t.where('plans', 'paintingId', id)).filter(({ plan }) => isWholePlan(plan));
  const readings = await t.where('readings', 'paintingId', id);
  const sessions = await t.where('sessions', 'paintingId', id);
  const events: PaintingFile['events'][number][] = [];
  const notes: PaintingFile['notes'][number][] = [];
  const lastPhotos: PaintingFile['lastPhotos'][number][] = [];
  for (const { id: sessionId } of sessions) {
    events.push(...(await t.where('events', 'sessionId', sessionId)).filter(isLine));
    const note = (await t.get('settings', noteDraftName(sessionId)))?.value;
    if (typeof note === 'string') notes.push({ sessionId, text: note });
    const last = await lastRecordPhotoOf(t, sessionId);
    if (last) lastPhotos.push({ sessionId, ...last });
  }
  const ofRecord = events.flatMap(({ what }) => (what.kind === 'photo' ? [what.photoId] : []));
  return {
    file: {
      painting,
      thumbnail: thumbnail instanceof ArrayBuffer ? thumbnail : null,
      photos: [],
      sessions: sessions.map(({ id: sessionId, planId }) => ({ id: sessionId, planId })),
      events,
      notes,
      lastPhotos,
    },
    plans,
    readings,
    photoIds: [
      ...new Set([
        painting.reference.photoId,
        ...ofRecord,
        ...lastPhotos.map(({ photoId }) => photoId),
      ]),
    ],
  };
}

/** Names of the settings a copy takes along. */
export const boxSetting = 'paint box';
const readers: Readonly<Record<string, (value: unknown) => unknown>> = {
  'air and paper': parseKeptAir,
  easel: easelSettingsOf,
};
export const copiedSettings: readonly string[] = Object.keys(readers);

/** A setting as it counts; null where it can't be read. */
export const settingRead = (name: string, value: unknown): unknown =>
  value === null || value === undefined ? null : (readers[name]?.(value) ?? null);

/** Within a transaction over the settings: her box, and what she has set. */
export async function settingsInCopy(
  t: Transaction,
): Promise<{ box: unknown; settings: Record<string, unknown> }> {
  const box = (await t.get('settings', boxSetting))?.value ?? null;
  const settings: Record<string, unknown> = {};
  for (const name of copiedSettings) {
    const read = settingRead(name, (await t.get('settings', name))?.value);
    if (read) settings[name] = read;
  }
  return { box, settings };
}
