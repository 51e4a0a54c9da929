import { deflateRawSync } from 'node:zlib';
import { beforeAll, expect, test } from 'vitest';
import { BackupProblem } from '../../../../app/storage/backup/backup-problem.ts';
import { paintingOf, settingsOf } from '../../../../app/storage/backup/check-backup.ts';
import { type OpenBackup, openBackup } from '../../../../app/storage/backup/open-backup.ts';
import { openStore } from '../../../../app/storage/open-store.ts';
import { copyOf, fillStore } from '../../../support/storage/made-backup.ts';

const endless = new AbortController().signal;
let whole: OpenBackup;
const rows = new Map<string, unknown>();

beforeAll(async () => {
  const store = await openStore({ name: 'check-backup' });
  await fillStore(store);
  whole = await openBackup(endless, await copyOf(store));
  for (const { name } of whole.manifest.files)
    if (name.endsWith('.json')) rows.set(name, await whole.row(endless, name));
});

// biome-ignore lint/suspicious/noExplicitAny: rows of a copy are spoilt in ways no type allows
type Row = any;
const folder = 'paintings/0001/';

/** The copy with some rows changed, and names of files more or less. */
function changed(
  rowsOf: Record<string, (row: Row) => Row>,
  names: (names: string[]) => string[] = (all) => all,
): OpenBackup {
  const { manifest } = whole;
  const kept = names(manifest.files.map(({ name }) => name));
  return {
    manifest: { ...manifest, files: kept.map((name) => ({ name, bytes: 1, sha256: '' })) } as never,
    bytes: whole.bytes,
    row: async (_signal, name) => {
      const row = structuredClone(
        rows.get(name.replace('plan-0002', 'plan-0001').replace('reading-0002', 'reading-0001')),
      );
      return rowsOf[name]?.(row) ?? row;
    },
  };
}

async function said(copy: OpenBackup): Promise<string> {
  try {
    const { plans, readings, file } = await paintingOf(endless, copy, '0001');
    return `${file.painting.id} ${plans.length} ${readings.length}`;
  } catch (fault) {
    if (!(fault instanceof BackupProblem)) throw fault;
    return fault.kind;
  }
}
const spoilt = (how: (row: Row) => Row): OpenBackup => changed({ [`${folder}painting.json`]: how });
const more = <T extends string>(list: T, change: (first: Row) => Row) =>
  spoilt((row) => ({ ...row, [list]: [...row[list], change(row[list][0])] }));

test('a painting of a copy that is whole is read with its plan and its reading, and nothing of another', async () => {
  expect(await said(changed({}))).toBe('a 1 1');
  const { file, plans, readings } = await paintingOf(endless, changed({}), '0001');
  expect([file.photos.length, file.sessions.length, file.events.length]).toEqual([2, 1, 4]);
  expect([plans[0]?.id, readings[0]?.paintingId]).toEqual(['plan a', 'a']);
  const other = await paintingOf(endless, changed({}), '0002');
  expect([other.file.painting.id, other.plans, other.readings]).toEqual(['b', [], []]);
});

test.each<[string, () => OpenBackup]>([
  [
    'a plan of another painting',
    () => changed({ [`${folder}plan-0001.json`]: (row) => ({ ...row, paintingId: 'b' }) }),
  ],
  [
    'a reading of another painting',
    () => changed({ [`${folder}reading-0001.json`]: (row) => ({ ...row, paintingId: 'b' }) }),
  ],
  [
    'a plan under another name',
    () => changed({ [`${folder}plan-0001.json`]: (row) => ({ ...row, id: 'plan x' }) }),
  ],
  [
    'a reading under another name',
    () => changed({ [`${folder}reading-0001.json`]: (row) => ({ ...row, id: 'b 1' }) }),
  ],
  ['a plan twice', () => changed({}, (names) => [...names, `${folder}plan-0002.json`])],
  ['a reading twice', () => changed({}, (names) => [...names, `${folder}reading-0002.json`])],
  ['a session twice', () => more('sessions', (first) => first)],
  ['a photo twice', () => more('photos', (first) => first)],
  ['a line twice', () => more('events', (first) => first)],
  ['a line of an unknown session', () => more('events', (first) => ({ ...first, sessionId: 'x' }))],
  ['a note of an unknown session', () => more('notes', (first) => ({ ...first, sessionId: 'x' }))],
  [
    'a last photo of an unknown session',
    () => more('lastPhotos', (first) => ({ ...first, sessionId: 'x' })),
  ],
  [
    'a photo nothing names',
    () =>
      spoilt((row) => ({
        ...row,
        photos: row.photos.map((photo: Row, i: number) => (i ? { ...photo, id: 'x' } : photo)),
      })),
  ],
  [
    'two photos of one file',
    () =>
      spoilt((row) => ({
        ...row,
        photos: row.photos.map((photo: Row) => ({ ...photo, file: row.photos[0].file })),
      })),
  ],
  [
    'a photo whose file is missing',
    () => changed({}, (names) => names.filter((name) => name !== `${folder}photo-0002.jpg`)),
  ],
  ['a file that no photo has', () => changed({}, (names) => [...names, `${folder}photo-0003.jpg`])],
  [
    'a photo of another name',
    () =>
      spoilt((row) => ({
        ...row,
        photos: row.photos.map((photo: Row, i: number) =>
          i ? { ...photo, file: `${folder}photo-0009.jpg` } : photo,
        ),
      })),
  ],
])('%s: rows that do not belong together are refused', async (_, copy) => {
  expect(await said(copy())).toBe('damaged');
});

test('a map must unpack to as many bytes as the picture has pixels, packed or plain', async () => {
  const row = rows.get(`${folder}reading-0001.json`) as Row;
  const { width, height } = row.reading.raster;
  const count = width * height;
  const withMap = (field: string, packing: string, length: number, spoil = false) => {
    const plain = new Uint8Array(length);
    const bytes = packing === 'plain' ? plain : new Uint8Array(deflateRawSync(plain));
    const own = spoil ? bytes.map((byte) => byte ^ 0xff) : bytes;
    const { buffer } = new Uint8Array(own);
    return said(
      changed({
        [`${folder}reading-0001.json`]: (each) => ({
          ...each,
          [field]: { packing, bytes: buffer },
        }),
      }),
    );
  };
  for (const field of ['slotMap', 'lightnessMap'])
    for (const packing of ['plain', 'deflate-raw']) {
      expect(await withMap(field, packing, count)).toBe('a 1 1');
      expect(await withMap(field, packing, count + 1)).toBe('damaged');
      expect(await withMap(field, packing, count - 1)).toBe('damaged');
    }
  expect(await withMap('slotMap', 'deflate-raw', count, true)).toBe('damaged');
});

test('the box and the settings are checked, and may both be missing', async () => {
  const { box, settings } = await settingsOf(endless, changed({}));
  expect(box?.owned).toEqual(['PB29', 'PY150', 'own-blue']);
  expect([...settings.keys()]).toEqual(['air and paper']);
  const none = await settingsOf(
    endless,
    changed({}, (names) => names.filter((name) => name.includes('/'))),
  );
  expect([none.box, none.settings.size]).toEqual([null, 0]);
  const onlyBox = await settingsOf(
    endless,
    changed({}, (names) => names.filter((name) => name !== 'settings.json')),
  );
  expect([onlyBox.box === null, onlyBox.settings.size]).toEqual([false, 0]);
  for (const how of [
    { 'settings.json': () => 'no rows' },
    { 'settings.json': (row: Row) => ({ ...row, unheard: 1 }) },
    { 'settings.json': () => ({ 'air and paper': null }) },
    { 'box.json': () => ({ schema: 2 }) },
  ] as Record<string, (row: Row) => Row>[])
    await expect(settingsOf(endless, changed(how))).rejects.toMatchObject({ kind: 'damaged' });
});

test('her own paints are taken only with figures a paint can have', async () => {
  const withPaint = (how: (paint: Row) => Row): Promise<unknown> =>
    settingsOf(
      endless,
      changed({ 'box.json': (row) => ({ ...row, paints: row.paints.map(how) }) }),
    ).then(
      () => 'taken',
      (fault) => (fault instanceof BackupProblem ? fault.kind : fault),
    );
  const figures = (first: number) => [first, ...new Array(35).fill(1)];
  const told = await Promise.all(
    [
      { K: figures(0) },
      { K: figures(-1e-9) },
      { S: figures(-1) },
      { K: figures(Number.NaN) },
      { K: new Array(35).fill(1) },
      { K: new Array(37).fill(1) },
      { strength: 1e-6 },
      { strength: 0 },
      { strength: -1 },
      { mostLoad: 0 },
      { properties: { transparency: 'X' } },
      { revision: 1.5 },
      { id: '' },
    ].map((change) => withPaint((paint) => ({ ...paint, ...change }))),
  );
  expect(told).toEqual([
    ...['taken', 'damaged', 'damaged', 'damaged', 'damaged', 'damaged', 'taken'],
    ...Array(6).fill('damaged'),
  ]);
});
