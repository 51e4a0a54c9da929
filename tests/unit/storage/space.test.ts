import { expect, test } from 'vitest';
import type { Transaction } from '../../../app/storage/schema.ts';
import { createSpace } from '../../../app/storage/space.ts';

// Rows of the tests' own, counted by hand: bytes of buffers as they are, of a figure 8, of a text 2 a sign (own).
const rows: Record<string, readonly Record<string, unknown>[]> = {
  paintings: [{ id: 'p', reference: { photoId: 'own' } }], // 2 + 6
  photos: [
    { id: 'own', bytes: new ArrayBuffer(1000) },
    { id: 'shot', bytes: new ArrayBuffer(300) },
    { id: 'other', bytes: new ArrayBuffer(7) },
  ],
  thumbnails: [{ id: 'p', jpeg: new Uint8Array(50) }],
  readings: [
    { paintingId: 'p', map: new Uint8Array(20), shares: [0.25, 0.5], whole: true, none: null },
  ], // 2 + 20 + 32
  plans: [
    { paintingId: 'p', title: 'dusk' },
    { paintingId: 'q', title: 'of another painting' },
  ], // 2 + 8
  sessions: [{ id: 's', paintingId: 'p' }],
  events: [
    { sessionId: 's', what: { kind: 'photo', photoId: 'shot' } },
    { sessionId: 's', what: { kind: 'photo', photoId: 'shot' } },
    { sessionId: 's', what: { kind: 'note' } },
  ],
};
const transaction = {
  get: async (table: string, key: unknown) => rows[table]?.find(({ id }) => id === key),
  where: async (table: string, field: string, value: string) =>
    rows[table]?.filter((row) => row[field] === value) ?? [],
} as unknown as Transaction;
const space = createSpace({
  read: (_, work) => work(transaction),
  write: () => Promise.reject(new Error('nothing is written')),
});

test('a painting takes up its row, its photo, its thumbnail, what was made of it and the photos of its record, each once', async () => {
  expect(await space.spaceOf('p')).toEqual({
    bytes: 8 + 1000 + 50 + 54 + 10 + 300,
    recordPhotoBytes: 300,
  });
});
