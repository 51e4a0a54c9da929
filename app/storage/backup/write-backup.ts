import { BlobReader, configure, ZipWriter } from '@zip.js/zip.js/lib/zip-core-custom.js';
import { hideLocation } from '../../core/reference/hide-location.ts';
import type { SessionEvent } from '../../core/session/session-event.ts';
import type { Transaction } from '../schema.ts';
import { sha256 } from '../sha256.ts';
import type { Transactions } from '../transactions.ts';
import { BackupProblem } from './backup-problem.ts';
import {
  backupFormat,
  CLIMBS,
  fits,
  type Manifest,
  manifestName,
  remainsFormat,
} from './manifest.ts';
import { readPaintingRows, settingsInCopy } from './painting-rows.ts';
import { rowAsText } from './plain-text.ts';
import { ownBox, type PaintingFile, paintingFile, planRow, readingRow } from './row-schemas.ts';

/** What goes into a copy. */
export type BackupScope =
  | { readonly kind: 'everything' }
  | { readonly kind: 'painting'; readonly id: string }
  | { readonly kind: 'box' };

export interface BackupWish {
  readonly scope: BackupScope;
  /** Whether photos may say where they were taken. */
  readonly places: boolean;
  /** The app's name and version. */
  readonly app: string;
  readonly madeAt: number;
  /** Hears how much is done, 0..1. */
  readonly onPart?: (part: number) => void;
}

export interface WrittenBackup {
  readonly paintings: number;
  /** Titles of paintings that are damaged, and so are not in it. */
  readonly leftOut: readonly string[];
}

/** A ZIP being written: what is put into it is listed with its sum. */
function createZip(
  signal: AbortSignal,
  sink: WritableStream<Uint8Array>,
  { madeAt, places }: Pick<BackupWish, 'madeAt' | 'places'>,
) {
  configure({ useWebWorkers: false });
  const zip = new ZipWriter(sink, { extendedTimestamp: false, lastModDate: new Date(madeAt) });
  const files: Manifest['files'] = [];

  async function add(name: string, bytes: Uint8Array<ArrayBuffer>, packed: boolean): Promise<void> {
    signal.throwIfAborted();
    files.push({ name, bytes: bytes.length, sha256: await sha256(bytes) });
    await zip.add(name, new BlobReader(new Blob([bytes])), { level: packed ? 6 : 0, signal });
  }
  return {
    files,
    addRow: (name: string, row: unknown): Promise<void> =>
      add(name, new TextEncoder().encode(rowAsText(row)), true),
    /** Photos of a painting, one after the other; answers what is told of them. */
    async addPhotos(path: string, ids: readonly string[], transactions: Transactions) {
      const photos: PaintingFile['photos'][number][] = [];
      for (const photoId of ids) {
        const photo = await transactions.read(['photos'], (t) => t.get('photos', photoId));
        if (!(photo?.bytes instanceof ArrayBuffer)) continue;
        const { id, mime, sha256, name } = photo;
        const file = `${path}/photo-${numbered(photos.length + 1)}.${endingOf(mime)}`;
        const seen = new Uint8Array(photo.bytes);
        await add(file, places ? seen : (hideLocation(seen) as Uint8Array<ArrayBuffer>), false);
        photos.push({ id, mime, sha256, name, file });
      }
      return photos;
    },
    async end(manifest: object): Promise<void> {
      const text = new TextEncoder().encode(JSON.stringify(manifest, null, 1));
      await zip.add(manifestName, new BlobReader(new Blob([text])), { level: 6, signal });
      await zip.close();
    },
  };
}

/** Writes a copy, one painting and one photo after the other, so that little of it is ever in memory. */
export async function writeBackup(
  signal: AbortSignal,
  transactions: Transactions,
  { scope, places, app, madeAt, onPart }: BackupWish,
  sink: WritableStream<Uint8Array>,
): Promise<WrittenBackup> {
  const zip = createZip(signal, sink, { madeAt, places });
  const leftOut: string[] = [];
  const paintings: Manifest['paintings'] = [];

  /** Its title; null where it is damaged, or gone by now. What can be made again and is damaged stays out. */
  async function addPainting(id: string, folder: string): Promise<string | null> {
    const kept = await transactions.read(paintingTables, (t) => readPaintingRows(t, id));
    if (!kept || !fits(paintingFile, kept.file)) return null;
    const path = `paintings/${folder}`;
    const photos = await zip.addPhotos(path, kept.photoIds, transactions);
    await zip.addRow(`${path}/painting.json`, { ...kept.file, photos });
    for (const [i, row] of kept.plans.filter((each) => fits(planRow, each)).entries())
      await zip.addRow(`${path}/plan-${numbered(i + 1)}.json`, row);
    for (const [i, row] of kept.readings.filter((each) => fits(readingRow, each)).entries())
      await zip.addRow(`${path}/reading-${numbered(i + 1)}.json`, row);
    return kept.file.painting.title;
  }

  const ids = await idsIn(transactions, scope);
  for (const [i, { id, title }] of ids.entries()) {
    const folder = numbered(i + 1);
    const found = await addPainting(id, folder);
    if (found === null) leftOut.push(title);
    else paintings.push({ folder, title: found.slice(0, 2000) });
    onPart?.((i + 1) / ids.length);
  }
  const { box, settings } = await transactions.read(['settings'], settingsInCopy);
  if (scope.kind !== 'painting' && box !== null) {
    if (fits(ownBox, box)) await zip.addRow('box.json', box);
    else leftOut.push('Your paint box');
  }
  if (scope.kind === 'everything' && Object.keys(settings).length > 0)
    await zip.addRow('settings.json', settings);
  if (zip.files.length === 0) throw new BackupProblem('nothing');
  const manifest: Manifest = {
    format: backupFormat,
    version: CLIMBS.length + 1,
    app,
    madeAt,
    holds: scope.kind,
    places,
    paintings,
    files: zip.files,
  };
  await zip.end(manifest);
  return { paintings: paintings.length, leftOut };
}

const paintingTables = [
  ...(['paintings', 'thumbnails', 'plans', 'readings', 'sessions', 'events', 'settings'] as const),
];

const numbered = (n: number): string => String(n).padStart(4, '0');

const endings: Readonly<Record<string, string>> = { 'image/jpeg': 'jpg' };
const endingOf = (mime: string): string =>
  endings[mime] ?? (/^image\/([a-z]{3,4})$/.exec(mime)?.[1] || 'bin');

/** Those that hang on her wall, the newest first; what she has put away stays out of a copy. */
const idsIn = (
  transactions: Transactions,
  scope: BackupScope,
): Promise<readonly { readonly id: string; readonly title: string }[]> =>
  scope.kind === 'box'
    ? Promise.resolve([])
    : transactions.read(['cards'], async (t: Transaction) =>
        (await t.all('cards'))
          .filter(({ id, deletedAt }) =>
            scope.kind === 'painting' ? id === scope.id : deletedAt === undefined,
          )
          .sort((a, b) => b.updatedAt - a.updatedAt)
          .map(({ id, title }) => ({
            id,
            title: typeof title === 'string' ? title : 'A painting',
          })),
      );

const isId = (id: unknown): id is string => typeof id === 'string';

/**
 * What is left of a damaged painting: its photos, and its rows as they are, to be looked at. Answers how many photos
 * there are; rejects with a BackupProblem where nothing is left.
 */
export async function writeRemains(
  signal: AbortSignal,
  transactions: Transactions,
  id: string,
  { app, madeAt, places }: Pick<BackupWish, 'app' | 'madeAt' | 'places'>,
  sink: WritableStream<Uint8Array>,
): Promise<number> {
  const rows = await transactions.read(paintingTables, async (t) => {
    const painting: unknown = await t.get('paintings', id);
    const sessions = await t.where('sessions', 'paintingId', id);
    const events: unknown[] = [];
    for (const session of sessions)
      events.push(...(await t.where('events', 'sessionId', session.id)));
    return { painting, sessions, events, plans: await t.where('plans', 'paintingId', id) };
  });
  const { reference } = (rows.painting ?? {}) as { reference?: { photoId?: unknown } };
  const told = rows.events.map(
    (line) => (line as Partial<SessionEvent>)?.what as { photoId?: unknown },
  );
  const photoIds = [reference?.photoId, ...told.map((what) => what?.photoId)].filter(isId);
  const zip = createZip(signal, sink, { madeAt, places });
  const photos = await zip.addPhotos('paintings/0001', [...new Set(photoIds)], transactions);
  if (!rows.painting && photos.length === 0) throw new BackupProblem('nothing-left');
  await zip.addRow('paintings/0001/painting.json', { ...rows, photos });
  await zip.end({ format: remainsFormat, version: 1, app, madeAt, places, files: zip.files });
  return photos.length;
}
