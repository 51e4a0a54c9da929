import type { TableName, Transaction } from './schema.ts';
import type { Transactions } from './transactions.ts';

/** What one painting takes up on the device, bytes, to some per cent. */
export interface PaintingSpace {
  /** Photo, readings, plans, record photos: all of it. */
  readonly bytes: number;
  /** Photos she took for the record: the first to do without. */
  readonly recordPhotoBytes: number;
}

export interface Space {
  spaceOf(paintingId: string): Promise<PaintingSpace>;
  /** The photos of its record go; what the log says stays. */
  dropRecordPhotos(paintingId: string): Promise<void>;
}

const tables: readonly TableName[] = [
  ...(['paintings', 'photos', 'thumbnails', 'plans', 'readings', 'sessions', 'events'] as const),
];

export function createSpace(transactions: Transactions): Space {
  return {
    spaceOf: (id) => transactions.read(tables, (t) => measure(t, id)),
    dropRecordPhotos: (id) =>
      transactions.write(`record photos of ${id}`, ['photos', 'sessions', 'events'], async (t) => {
        for (const photoId of await recordPhotoIds(t, id)) await t.remove('photos', photoId);
      }),
  };
}

async function measure(t: Transaction, id: string): Promise<PaintingSpace> {
  const painting: unknown = await t.get('paintings', id);
  const photoId = (painting as { reference?: { photoId?: unknown } } | undefined)?.reference
    ?.photoId;
  const photo = typeof photoId === 'string' ? await photoBytes(t, photoId) : 0;
  const thumbnail = sizeOf((await t.get('thumbnails', id))?.jpeg);
  let made = 0;
  for (const row of await t.where('readings', 'paintingId', id)) made += sizeOf(row);
  for (const row of await t.where('plans', 'paintingId', id)) made += sizeOf(row);
  let recordPhotoBytes = 0;
  for (const each of await recordPhotoIds(t, id)) recordPhotoBytes += await photoBytes(t, each);
  const bytes = sizeOf(painting) + photo + thumbnail + made + recordPhotoBytes;
  return { bytes, recordPhotoBytes };
}

async function photoBytes(t: Transaction, id: string): Promise<number> {
  const photo = await t.get('photos', id);
  return photo ? sizeOf(photo.bytes) : 0;
}

async function recordPhotoIds(t: Transaction, paintingId: string): Promise<Set<string>> {
  const ids = new Set<string>();
  for (const { id } of await t.where('sessions', 'paintingId', paintingId))
    for (const { what } of await t.where('events', 'sessionId', id))
      if (what?.kind === 'photo') ids.add(what.photoId);
  return ids;
}

/** Bytes of buffers as they are, of a figure eight, of a text two a sign: about what a database takes. */
function sizeOf(value: unknown): number {
  if (value instanceof ArrayBuffer || ArrayBuffer.isView(value)) return value.byteLength;
  if (typeof value === 'string') return 2 * value.length;
  if (typeof value !== 'object' || value === null) return 8;
  let bytes = 0;
  for (const inner of Object.values(value)) bytes += sizeOf(inner);
  return bytes;
}
