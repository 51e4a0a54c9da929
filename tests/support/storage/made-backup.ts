import 'fake-indexeddb/auto';
import {
  BlobReader,
  configure,
  type FileEntry,
  Uint8ArrayWriter,
  ZipReader,
  ZipWriter,
} from '@zip.js/zip.js/lib/zip-core-custom.js';
import sharp from 'sharp';
import { type OwnBox, withOwnPaint, withTicks } from '../../../app/core/paint/own-box.ts';
import type { EventBody } from '../../../app/core/session/session-event.ts';
import type { BackupWish } from '../../../app/storage/backup/write-backup.ts';
import type { Store } from '../../../app/storage/open-store.ts';
import { sha256 } from '../../../app/storage/sha256.ts';
import { eventSample, newPlanSample, paintingSample, planSample } from './kept-samples.ts';

configure({ useWebWorkers: false });

/** A photo that says where it was taken. */
export const taggedPhoto = async (): Promise<ArrayBuffer> => {
  const jpeg = await sharp({
    create: { width: 40, height: 30, channels: 3, background: { r: 200, g: 160, b: 90 } },
  })
    .withExif({ IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '52/1 31/1 4723/100' } })
    .jpeg()
    .toBuffer();
  return new Uint8Array(jpeg).buffer;
};

const figures = (value: number): number[] => new Array(36).fill(value);

export const madeBox: OwnBox = {
  ...withOwnPaint(withTicks({ schema: 2, owned: null, paints: [], gone: [] }, ['PB29', 'PY150']), {
    id: 'own-blue',
    name: 'my blue',
    ci: ['PB29'],
    K: figures(1),
    S: figures(0.1),
    strength: 2,
    properties: {
      transparency: 'T',
      staining: 1,
      granulation: null,
      lightfastness: null,
      caution: null,
    },
  }),
  strengthLessons: [
    { event: 'e', session: 's a', paint: 'PB29', name: 'blue', seems: 'weaker', planned: 1, at: 5 },
  ],
};

const told: readonly EventBody[] = [
  { kind: 'started' },
  { kind: 'step-begun', key: 'wash 1' },
  { kind: 'photo', photoId: 'record a', key: 'wash 1' },
  { kind: 'note', text: 'seed heads, last light' },
];

/** Fills a store: paintings 'a' and 'b' of one photo each, 'a' with a plan, a session, a record; box, air. */
export async function fillStore(store: Store): Promise<void> {
  for (const id of ['a', 'b']) {
    const bytes = await taggedPhoto();
    const photo = { id: `photo ${id}`, bytes, mime: 'image/jpeg', sha256: await sha256(bytes) };
    await store.addPainting(
      {
        ...paintingSample(id, photo.id, 1000),
        decisions: [
          { id: 'd1', at: 1, kind: 'bands', count: 4 },
          { id: 'd2', at: 2, kind: 'subject', mode: 'circle', stroke: [[0.1, 0.2]], brush: 0 },
        ],
      },
      { ...photo, name: 'seed heads.jpg' },
    );
  }
  const plan = planSample('plan a');
  const steps = plan.steps.map((step) => ({ ...step, look: new Uint8ClampedArray([1, 2, 255]) }));
  await store.keepPlan('a', { ...newPlanSample('plan a'), plan: { ...plan, steps } });
  await store.keepThumbnail('a', new Uint8Array([0xff, 0xd8, 9]).buffer);
  await store.sessionOf('a', 's a');
  const record = await taggedPhoto();
  await store.keepRecordPhoto(
    's a',
    { id: 'record a', bytes: record, mime: 'image/jpeg', sha256: await sha256(record), name: '' },
    'wash 1',
  );
  await store.appendEvents(told.map((what, seq) => eventSample('s a', seq, what)));
  await store.keepSetting('paint box', madeBox);
  await store.keepSetting('note draft s a', 'the sky is');
  await store.keepSetting('air and paper', {
    schema: 1,
    weather: {
      celsius: 16,
      humidity: 70,
      airSpeed: 0.15,
      sunWatts: 0,
      backing: 'board',
      hairDryer: false,
    },
    paper: { gsm: 300, fibre: 'cotton' },
  });
}

const endless = new AbortController().signal;

export async function copyOf(store: Store, wish: Partial<BackupWish> = {}): Promise<Blob> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const sink = new WritableStream<Uint8Array>({
    write: (chunk) => void parts.push(new Uint8Array(chunk)),
  });
  const backups = await store.backups();
  await backups.write(
    endless,
    { scope: { kind: 'everything' }, places: false, app: 'a test', madeAt: 5000, ...wish },
    sink,
  );
  return new Blob(parts);
}

export async function bringBack(
  store: Store,
  copy: Blob,
  way: 'merge' | 'replace' = 'merge',
): Promise<void> {
  const backups = await store.backups();
  await backups.restore(endless, await backups.check(endless, copy), way);
}

/** Everything that is kept, by table; bytes as lists of figures. */
export async function everythingIn(name: string): Promise<Record<string, unknown[]>> {
  const request = indexedDB.open(name);
  const database = await new Promise<IDBDatabase>((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const found: Record<string, unknown[]> = {};
  for (const table of database.objectStoreNames)
    found[table] = await new Promise<unknown[]>((resolve, reject) => {
      const all = database.transaction(table).objectStore(table).getAll();
      all.onsuccess = () => resolve(all.result.map(plain));
      all.onerror = () => reject(all.error);
    });
  database.close();
  return found;
}

const plain = (row: unknown): unknown =>
  JSON.parse(
    JSON.stringify(row, (_key, value) => {
      if (value instanceof ArrayBuffer) return { buffer: [...new Uint8Array(value)] };
      if (ArrayBuffer.isView(value))
        return { [value.constructor.name]: [...(value as Uint8Array)] };
      return value;
    }),
  );

export type Files = Map<string, Uint8Array<ArrayBuffer>>;

/** The files of a copy, to be changed and packed again. */
export async function filesOf(copy: Blob): Promise<Files> {
  const zip = new ZipReader(new BlobReader(copy));
  const files: Files = new Map();
  for (const entry of await zip.getEntries())
    files.set(
      entry.filename,
      new Uint8Array(await (entry as FileEntry).getData(new Uint8ArrayWriter())),
    );
  return files;
}

/** A copy of these files; the manifest tells sizes and sums as they are now, unless it is said otherwise. */
export async function packed(files: Files, { trueSums = true, level = 6 } = {}): Promise<Blob> {
  const out = new Map(files);
  const manifest = out.get('manifest.json');
  if (trueSums && manifest) {
    const told = JSON.parse(new TextDecoder().decode(manifest)) as {
      files: { name: string; bytes: number; sha256: string }[];
    };
    for (const each of told.files ?? []) {
      const bytes = out.get(each.name);
      if (bytes) Object.assign(each, { bytes: bytes.length, sha256: await sha256(bytes) });
    }
    out.set('manifest.json', new TextEncoder().encode(JSON.stringify(told)));
  }
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const zip = new ZipWriter(
    new WritableStream<Uint8Array>({ write: (chunk) => void parts.push(new Uint8Array(chunk)) }),
    { extendedTimestamp: false, lastModDate: new Date(5000) },
  );
  for (const [name, bytes] of out)
    await zip.add(name, new BlobReader(new Blob([bytes])), {
      level: name.endsWith('.json') ? level : 0,
    });
  await zip.close();
  return new Blob(parts);
}

export const asText = (value: unknown): Uint8Array<ArrayBuffer> =>
  new TextEncoder().encode(JSON.stringify(value));
export const asJson = (bytes: Uint8Array | undefined) =>
  JSON.parse(new TextDecoder().decode(bytes));
