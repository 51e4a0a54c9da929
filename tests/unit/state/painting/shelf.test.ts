import { describe, expect, test } from 'vitest';
import type { Painting } from '../../../../app/core/decisions/painting.ts';
import type { EventBody } from '../../../../app/core/session/session-event.ts';
import { createShelf } from '../../../../app/state/painting/shelf.ts';
import type { Store } from '../../../../app/storage/open-store.ts';
import { faultOf, madeStore } from '../../../support/state/made-store.ts';
import {
  eventSample,
  newPlanSample,
  paintingSample,
  photoSample,
} from '../../../support/storage/kept-samples.ts';

async function shelfOver(...paintings: Painting[]) {
  let now = 1000;
  const store = await madeStore({ readTimeMs: () => now++ });
  for (const painting of paintings)
    await store.addPainting(painting, photoSample(painting.reference.photoId));
  return { store, shelf: createShelf(store) };
}

/** A session of the painting over a plan of two steps; its lines come 90 s apart. */
async function sessionOf(store: Store, id: string, ...bodies: EventBody[]): Promise<void> {
  await store.keepPlan(id, newPlanSample(`plan of ${id}`));
  await store.sessionOf(id, `session of ${id}`);
  await store.appendEvents(
    bodies.map((what, seq) => ({
      ...eventSample(`session of ${id}`, seq, what),
      wallMs: 90_000 * seq,
      monoMs: 90_000 * seq,
    })),
  );
}

const places = ({ paintings }: ReturnType<typeof createShelf>) =>
  Object.fromEntries(paintings.value.map(({ id, place, stage }) => [id, `${stage}: ${place}`]));

test('where each painting stands', async () => {
  const { store, shelf } = await shelfOver(
    paintingSample('new', 'a'),
    { ...paintingSample('looked at', 'b'), purpose: 'study' },
    paintingSample('planned', 'c'),
    paintingSample('begun', 'd'),
    paintingSample('second step', 'e'),
    paintingSample('painted', 'f'),
    paintingSample('painted at once', 'g'),
  );
  await store.keepPlan('planned', newPlanSample('plan'));
  await sessionOf(store, 'begun', { kind: 'started' });
  await sessionOf(store, 'second step', { kind: 'step-begun', key: 'wash 2' });
  await sessionOf(
    store,
    'painted',
    { kind: 'started' },
    { kind: 'paused' },
    { kind: 'resumed' },
    { kind: 'finished' },
  );
  await sessionOf(store, 'painted at once', { kind: 'finished' });
  await shelf.refresh();
  expect(shelf.problem.value).toBeNull();
  expect(places(shelf)).toEqual({
    new: 'photo: not looked at yet',
    'looked at': 'study: study only',
    planned: 'plan: plan ready',
    begun: 'easel: at the easel, step 1 of 2',
    'second step': 'easel: at the easel, step 2 of 2',
    painted: 'finished: painted in 5 min', // 4.5, rounded up
    'painted at once': 'finished: painted in 1 min',
  });
});

test('the newest first, with the sheet used last; photos to choose among are counted apart', async () => {
  const { store, shelf } = await shelfOver(
    {
      ...paintingSample('old', 'a', 10),
      reference: {
        ...paintingSample('x', 'a').reference,
        sheet: { format: 'own', widthMm: 100, heightMm: 80 },
      },
    },
    paintingSample('newer', 'b', 20),
    { ...paintingSample('one', 'c', 30), purpose: 'candidate' },
    { ...paintingSample('two', 'd', 40), purpose: 'candidate' },
    {
      ...paintingSample('postcard', 'b', 50),
      studyOf: 'newer',
      reference: {
        ...paintingSample('x', 'b').reference,
        sheet: { format: 'own', widthMm: 148, heightMm: 105 },
      },
    },
  );
  expect(shelf.lastSheet()).toBeNull();
  await shelf.refresh();
  expect(shelf.paintings.value.map(({ id }) => id)).toEqual(['postcard', 'newer', 'old']);
  expect(shelf.candidates.value).toBe(2);
  expect(shelf.lastSheet()).toMatchObject({ format: 'quarter' }); // not the small study's
  await store.discard('newer');
  await shelf.refresh();
  expect(shelf.lastSheet()).toMatchObject({ widthMm: 100 });
});

test('a picture where it was looked at, none before', async () => {
  const { store, shelf } = await shelfOver(
    paintingSample('a', 'a', 2),
    paintingSample('b', 'b', 1),
  );
  await store.keepThumbnail('a', new Uint8Array([1, 2, 3]).buffer);
  await shelf.refresh();
  const [one, other] = shelf.paintings.value;
  expect(other?.picture).toBe('');
  const bytes = await (await fetch(one?.picture ?? '')).arrayBuffer();
  expect([...new Uint8Array(bytes)]).toEqual([1, 2, 3]);
  await shelf.refresh(); // the same picture keeps its address
  expect(shelf.paintings.value[0]?.picture).toBe(one?.picture);
  await store.keepThumbnail('a', new Uint8Array([4]).buffer);
  await shelf.refresh(); // the old address is given up, the new one holds
  await expect(fetch(one?.picture ?? '')).rejects.toThrow();
  expect((await fetch(shelf.paintings.value[0]?.picture ?? '')).ok).toBe(true);
});

describe('put away', () => {
  test('can be brought back, the last one first', async () => {
    const { shelf } = await shelfOver(paintingSample('a', 'a', 2), paintingSample('b', 'b', 1));
    await shelf.bringBack(); // nothing to bring back
    expect(shelf.removed.value).toBeNull();
    await shelf.remove('a');
    await shelf.remove('b');
    expect([shelf.paintings.value, shelf.removed.value]).toEqual([[], { id: 'b', title: 'b' }]);
    await shelf.bringBack();
    expect(shelf.paintings.value.map(({ id }) => id)).toEqual(['b']);
    expect(shelf.removed.value).toEqual({ id: 'a', title: 'a' });
  });

  test('a week ago is gone for good when the shelf is looked at', async () => {
    let now = 0;
    const store = await madeStore({ readTimeMs: () => now });
    await store.addPainting(paintingSample('a', 'a'), photoSample('a'));
    const shelf = createShelf(store);
    await shelf.remove('a');
    now = 7 * 24 * 3_600_000;
    await shelf.refresh();
    expect(shelf.removed.value?.id).toBe('a');
    now += 1;
    await shelf.refresh();
    expect(shelf.removed.value).toBeNull();
    expect(await store.photo('a')).toBeNull();
  });
});

test('a fault is said in a sentence; what hangs there stays', async () => {
  const { store, shelf } = await shelfOver(paintingSample('a', 'a'));
  await shelf.refresh();
  const broken = createShelf({
    ...store,
    cards: () => Promise.reject(faultOf('StorageError', 'Not to be read.')),
  });
  await broken.refresh();
  expect(broken.problem.value).toBe('Not to be read.');
  expect(shelf.keeping.value).toBe('There is no account and no server.');
  expect(createShelf({ ...store, keeps: false }).keeping.value).toMatch(
    /keeps nothing after it is closed/,
  );
});

test('of a long wall the newest hang, with their pictures; the rest when they are looked for', async () => {
  const { store, shelf } = await shelfOver();
  const total = 100;
  for (let i = 0; i < total; i++) {
    await store.addPainting(paintingSample(`p${i}`, 'f', i), photoSample('f', 10));
    await store.keepThumbnail(`p${i}`, new Uint8Array([i]).buffer);
  }
  const asked: number[] = [];
  const watched = createShelf({
    ...store,
    cardPictures: (ids) => {
      asked.push(ids.length);
      return store.cardPictures(ids);
    },
  });
  await watched.refresh();
  const first = watched.paintings.value.length;
  expect(watched.more.value).toBe(total - first);
  expect(watched.paintings.value.every(({ picture }) => picture !== '')).toBe(true);
  expect(asked.reduce((sum, n) => sum + n, 0)).toBe(first);
  while (watched.more.value > 0) await watched.showMore();
  expect(watched.paintings.value.map(({ id }) => id)).toHaveLength(total);
  expect(watched.paintings.value.at(-1)).toMatchObject({
    id: 'p0',
    picture: expect.stringMatching(/^blob:/),
  });
  expect(asked.reduce((sum, n) => sum + n, 0)).toBe(total);
  expect(shelf.last.value).toBeNull(); // not looked at yet
  expect(watched.last.value?.id).toBe(`p${total - 1}`);
});
