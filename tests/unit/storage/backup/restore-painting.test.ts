import { expect, test } from 'vitest';
import type { Painting } from '../../../../app/core/decisions/painting.ts';
import type { SessionEvent } from '../../../../app/core/session/session-event.ts';
import { BackupProblem } from '../../../../app/storage/backup/backup-problem.ts';
import type { BackupPainting } from '../../../../app/storage/backup/check-backup.ts';
import { restorePainting } from '../../../../app/storage/backup/restore-painting.ts';
import type { Transaction } from '../../../../app/storage/schema.ts';
import { lastPhotoName, noteDraftName } from '../../../../app/storage/sessions.ts';
import { eventSample, paintingSample } from '../../../support/storage/kept-samples.ts';

// biome-ignore lint/suspicious/noExplicitAny: rows of any table
type Row = any;
type Tables = Record<string, Row[]>;

/** A transaction over tables in memory. */
function over(tables: Tables): Transaction {
  const rowsOf = (table: string): Row[] => {
    tables[table] ??= [];
    return tables[table];
  };
  const isKey = (row: Row, key: unknown): boolean =>
    Array.isArray(key) ? row.sessionId === key[0] && row.seq === key[1] : row.id === key;
  const remove = async (table: string, key: unknown): Promise<void> => {
    tables[table] = rowsOf(table).filter((row) => !isKey(row, key));
  };
  return {
    get: async (table: string, key: unknown) => rowsOf(table).find((row) => isKey(row, key)),
    all: async (table: string) => rowsOf(table),
    where: async (table: string, field: string, value: unknown) =>
      rowsOf(table).filter((row) => row[field] === value),
    put: async (table: string, row: Row) => {
      await remove(table, table === 'events' ? [row.sessionId, row.seq] : row.id);
      rowsOf(table).push(row);
    },
    remove,
  } as unknown as Transaction;
}

const bytes = new Uint8Array([1, 2, 3]).buffer;
const photo = (id: string, sha256 = 'ab') => ({
  ...{ id, mime: 'image/jpeg', sha256, name: `${id}.jpg`, file: `photo-${id}.jpg` },
});
const lines = (...ids: readonly string[]): SessionEvent[] =>
  ids.map((id, seq) => ({ ...eventSample('s', seq, { kind: 'note', text: id }), id }));
const painting = (more: Partial<Painting> = {}): Painting => ({
  ...paintingSample('a', 'pa', 1000),
  ...{ planIds: ['plan 2'], sessionIds: ['s'], ...more },
});

type File = BackupPainting['file'];
const inCopy = (file: Partial<File> = {}, more: Partial<BackupPainting> = {}): BackupPainting => ({
  file: {
    ...{ painting: painting(), thumbnail: new Uint8Array([9]).buffer, photos: [photo('pa')] },
    ...{ sessions: [{ id: 's', planId: 'plan 2' }], events: lines('x', 'y') },
    ...{ notes: [{ sessionId: 's', text: 'the sky is' }] },
    lastPhotos: [{ sessionId: 's', photoId: 'pa', key: 'wash 1' }],
    ...file,
  } as File,
  plans: [{ id: 'plan 2', paintingId: 'a' } as Row],
  readings: [{ id: 'a 1', paintingId: 'a' } as Row],
  ...more,
});

const restore = async (
  tables: Tables,
  copy: BackupPainting,
  more: Partial<Parameters<typeof restorePainting>[2]> = {},
): Promise<Tables> => {
  await restorePainting(over(tables), copy, {
    ...{
      readTimeMs: () => 7,
      alone: false,
      prefer: 'the later' as const,
      bytesOf: async () => bytes,
    },
    ...more,
  });
  return tables;
};
const paintingIn = ({ paintings = [] }: Tables): Painting => paintings.find(({ id }) => id === 'a');
const idsIn = (tables: Tables, table: string): string[] =>
  (tables[table] ?? []).map(({ id }) => id).sort();

test('into an empty place all of it comes: painting, photo, picture, plan, reading, log, note, last photo', async () => {
  const tables = await restore({}, inCopy());
  expect(paintingIn(tables)).toMatchObject({ planIds: ['plan 2'], sessionIds: ['s'] });
  expect(paintingIn(tables).handedOn).toBeUndefined();
  expect(tables.photos).toEqual([
    { id: 'pa', mime: 'image/jpeg', sha256: 'ab', name: 'pa.jpg', bytes },
  ]);
  expect(tables.thumbnails).toHaveLength(1);
  expect([idsIn(tables, 'plans'), idsIn(tables, 'readings')]).toEqual([['plan 2'], ['a 1']]);
  expect(tables.sessions).toEqual([{ id: 's', planId: 'plan 2', paintingId: 'a' }]);
  expect(idsIn(tables, 'events')).toEqual(['x', 'y']);
  expect(tables.settings).toEqual(
    expect.arrayContaining([
      { id: noteDraftName('s'), value: 'the sky is' },
      { id: lastPhotoName('s'), value: { photoId: 'pa', key: 'wash 1' } },
    ]),
  );
  expect(tables.cards?.find(({ id }) => id === 'a')?.pictureAt).toBe(7);
});

test('a painting that came alone, with a plan, is one that was handed on', async () => {
  const decided = painting({ decisions: [{ id: 'd', at: 1, kind: 'bands', count: 4 }] as never });
  const handed = await restore({}, inCopy({ painting: decided }), { alone: true });
  expect(paintingIn(handed).handedOn).toEqual({ planId: 'plan 2', decisions: 1 });
  const bare = await restore({}, inCopy({ painting: painting({ planIds: [] }) }), { alone: true });
  expect(paintingIn(bare).handedOn).toBeUndefined();
  const before = painting({ handedOn: { planId: 'old', decisions: 0 } });
  expect(paintingIn(await restore({}, inCopy({ painting: before }))).handedOn).toBeUndefined();
  // One that is here is joined, not handed on.
  const joined = await restore({ paintings: [painting()] }, inCopy(), { alone: true });
  expect(paintingIn(joined).handedOn).toBeUndefined();
});

test.each([
  [999, 'the later', 'here'],
  [1000, 'the later', 'here'],
  [1001, 'the later', 'copy'],
  [999, 'the copy', 'copy'],
] as const)(
  'of a copy changed at %i and one here at 1000, where %s is preferred, the one %s counts',
  async (updatedAt, prefer, which) => {
    const here = painting({
      title: 'here',
      planIds: ['plan 1', 'plan 2'],
      sessionIds: ['r'],
      deletedAt: 5,
    });
    const copy = painting({ title: 'copy', updatedAt, planIds: ['plan 2', 'plan 3'] });
    const tables = await restore(
      { paintings: [here], thumbnails: [{ id: 'a', jpeg: 'here' }] },
      inCopy({ painting: copy }),
      { prefer },
    );
    const found = paintingIn(tables);
    expect(found.title).toBe(which);
    expect(found.deletedAt).toBeUndefined(); // what was put away comes back
    // Plans and sessions of both, those of the one that counts last.
    expect(found.planIds).toEqual(
      which === 'copy' ? ['plan 1', 'plan 2', 'plan 3'] : ['plan 3', 'plan 1', 'plan 2'],
    );
    expect(found.sessionIds).toEqual(which === 'copy' ? ['r', 's'] : ['s', 'r']);
    expect(tables.thumbnails?.[0]?.jpeg === 'here').toBe(which === 'here');
  },
);

test('a picture of the copy is taken where there is none here, whichever counts', async () => {
  const later = painting({ updatedAt: 2000 });
  const tables = await restore({ paintings: [later] }, inCopy());
  expect(tables.thumbnails).toHaveLength(1);
  expect(tables.cards?.[0]?.pictureAt).toBe(7);
  const without = await restore({}, inCopy({ thumbnail: null }));
  expect(without.thumbnails ?? []).toEqual([]);
  expect(without.cards?.[0]?.pictureAt).toBeNull();
});

test('what is here stays: photo, plan, reading, session, note', async () => {
  const tables = await restore(
    {
      photos: [{ ...photo('pa'), more: 'kept' }],
      plans: [{ id: 'plan 2', paintingId: 'a', more: 'kept' }],
      readings: [{ id: 'a 1', paintingId: 'a', more: 'kept' }],
      sessions: [{ id: 's', planId: 'plan 2', paintingId: 'a', more: 'kept' }],
      settings: [
        { id: noteDraftName('s'), value: 'more of it' },
        { id: lastPhotoName('s'), value: 'kept' },
      ],
    },
    inCopy(),
  );
  for (const table of ['photos', 'plans', 'readings', 'sessions'])
    expect(tables[table]).toMatchObject([{ more: 'kept' }]);
  const drafts = tables.settings?.filter(({ id }) =>
    [noteDraftName('s'), lastPhotoName('s')].includes(id),
  );
  expect(drafts?.map(({ value }) => value)).toEqual(['more of it', 'kept']);
});

test.each<[string, Tables]>([
  ['a photo with other bytes', { photos: [photo('pa', 'cd')] }],
  ['a plan of another painting', { plans: [{ id: 'plan 2', paintingId: 'b' }] }],
  ['a reading of another painting', { readings: [{ id: 'a 1', paintingId: 'b' }] }],
  ['a session of another painting', { sessions: [{ id: 's', paintingId: 'b' }] }],
])('%s under the same name here: the copy is refused', async (_, tables) => {
  await expect(restore(tables, inCopy())).rejects.toBeInstanceOf(BackupProblem);
});

test.each([
  ['goes on where the log here ends: added', ['x'], ['x', 'y']],
  ['is a part of it: nothing changes', ['x', 'y', 'z'], ['x', 'y', 'z']],
  ['parts from it and is longer: it stands instead', ['w'], ['x', 'y']],
  ['parts from it and is as long: the one here stays', ['x', 'w'], ['w', 'x']],
  ['parts from it and is shorter: the one here stays', ['w', 'v', 'u'], ['u', 'v', 'w']],
])('a log that %s', async (_, here, left) => {
  const other = { ...eventSample('r', 0, { kind: 'note', text: '' }), id: 'of another' };
  const tables = await restore({ events: [...lines(...here), other] }, inCopy());
  expect(idsIn(tables, 'events')).toEqual([...left, 'of another'].sort());
});
