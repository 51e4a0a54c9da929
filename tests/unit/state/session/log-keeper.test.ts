import { afterEach, expect, test, vi } from 'vitest';
import type { SessionEvent } from '../../../../app/core/session/session-event.ts';
import { createLogKeeper } from '../../../../app/state/session/log-keeper.ts';
import type { Store } from '../../../../app/storage/open-store.ts';
import {
  easelOver,
  leaveEasels,
  paintedStore,
  storeWithSession,
} from '../../../support/state/made-easel.ts';
import { faultOf } from '../../../support/state/made-store.ts';
import { failPuts } from '../../../support/storage/failing-put.ts';
import {
  eventSample,
  newPlanSample,
  paintingSample,
} from '../../../support/storage/kept-samples.ts';

let end = (): void => {};
afterEach(() => {
  leaveEasels();
  end();
});

const line = (seq: number): SessionEvent =>
  eventSample('s', seq, { kind: 'note', text: `line ${seq}` });
const seqs = async (store: Store) => (await store.events('s')).map(({ seq }) => seq);

test('a line that could not be kept goes with the next one: no hole in the log', async () => {
  const store = await storeWithSession();
  const onKept = vi.fn();
  const keeper = createLogKeeper({ store, standOf: () => undefined, onKept, retryMs: 1e6 });
  keeper.keep([line(0)]);
  await expect.poll(() => keeper.unkept.value).toEqual([]);
  end = failPuts('events', 'QuotaExceededError');
  keeper.keep([line(1)]);
  await expect.poll(() => keeper.problem.value).toMatch(/too little room/);
  expect(keeper.unkept.value).toEqual([line(1)]);
  expect(await keeper.load('s')).toEqual([line(0), line(1)]);
  keeper.keep([line(2)]);
  await expect.poll(() => keeper.unkept.value).toEqual([]);
  expect([keeper.problem.value, store.saving.value]).toEqual([null, 'saved']);
  expect(await seqs(store)).toEqual([0, 1, 2]);
  expect(onKept).toHaveBeenCalledTimes(2);
});

test('and is tried again by itself', async () => {
  const store = await storeWithSession();
  const keeper = createLogKeeper({ store, standOf: () => undefined, onKept: () => {}, retryMs: 1 });
  end = failPuts('events', 'QuotaExceededError');
  keeper.keep([line(0)]);
  await expect.poll(() => seqs(store)).toEqual([0]);
  await expect.poll(() => keeper.problem.value).toBeNull();
});

test('lines that wait while their painting is discarded are let go, and leave no rows', async () => {
  const store = await storeWithSession();
  const keeper = createLogKeeper({
    store,
    standOf: () => undefined,
    onKept: vi.fn(),
    retryMs: 1e6,
  });
  end = failPuts('events', 'QuotaExceededError');
  keeper.keep([line(0)]);
  await expect.poll(() => keeper.problem.value).toMatch(/too little room/);
  await store.discard('meadow');
  keeper.keep([line(1)]); // sends what waits, as trying again does
  await expect.poll(() => keeper.unkept.value).toEqual([]);
  expect([keeper.problem.value, store.saving.value]).toEqual([null, 'saved']);
  expect(await seqs(store)).toEqual([]);
});

test('those of a session that is open wait until it is written again', async () => {
  const store = await storeWithSession();
  const stand = { step: 1, steps: 4, minutes: null };
  const keeper = createLogKeeper({ store, standOf: () => stand, onKept: vi.fn(), retryMs: 1 });
  await store.discard('meadow');
  keeper.keep([line(0)]);
  await expect.poll(() => keeper.problem.value).toMatch(/no longer here/);
  expect(keeper.unkept.value).toEqual([line(0)]);
  const painting = paintingSample('meadow', 'photo');
  const plans = [newPlanSample('plan')];
  await store.keepAgain({ painting, plans, session: { id: 's', planId: 'plan', log: [] } });
  await expect.poll(() => keeper.unkept.value).toEqual([]);
  expect(await seqs(store)).toEqual([0]);
});

test('a write that fails after a later one went well leaves no untrue word', async () => {
  const ends: { well(): void; ill(fault: Error): void }[] = [];
  const store = {
    events: async () => [],
    appendEvents: () =>
      new Promise<boolean>((well, ill) => {
        ends.push({ well: () => well(true), ill });
      }),
  };
  const keeper = createLogKeeper({ store, standOf: () => undefined, onKept: () => {}, retryMs: 1 });
  keeper.keep([line(0)]);
  keeper.keep([line(1)]);
  ends[1]?.well();
  await expect.poll(() => keeper.unkept.value).toEqual([]);
  ends[0]?.ill(faultOf('StorageError', 'No room.'));
  await expect.poll(() => keeper.problem.value).toBe('No room.');
  expect(keeper.unkept.value).toEqual([line(0)]);
  await expect.poll(() => ends.length).toBe(3);
  ends[2]?.well();
  await expect.poll(() => keeper.problem.value).toBeNull();
});

test('at the easel: saved is said only when every line is there, and the alert goes with it', async () => {
  const store = await paintedStore();
  const it = await easelOver(store);
  await it.easel.open('meadow');
  await store.settled();
  end = failPuts('events', 'QuotaExceededError');
  it.press(1);
  await expect.poll(() => it.easel.savedWord.value).toBe('not saved');
  expect(it.easel.problem.value).toMatch(/too little room/);
  it.press(1);
  await expect.poll(() => it.easel.savedWord.value).toBe('saved');
  expect(it.easel.problem.value).toBeNull();
  const sessionId = it.easel.desk.value?.sessionId ?? '';
  expect(await store.events(sessionId)).toEqual(it.easel.log.value);
});

test('lines that wait are in view when the session is opened again', async () => {
  const store = await paintedStore();
  const it = await easelOver({
    ...store,
    appendEvents: () => Promise.reject(faultOf('StorageError', 'No room.')),
  });
  await it.easel.open('meadow');
  it.press(2);
  await it.easel.lookBack('another');
  await it.easel.open('meadow');
  expect(it.kinds().slice(0, 3)).toEqual(['started', 'step-begun', 'step-done']);
});
