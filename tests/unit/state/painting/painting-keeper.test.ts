import { afterEach, expect, test } from 'vitest';
import type { Painting } from '../../../../app/core/decisions/painting.ts';
import { createPaintingKeeper } from '../../../../app/state/painting/painting-keeper.ts';
import { hour, meadow, storeWith, studioOver } from '../../../support/state/made-studio.ts';
import { failPuts } from '../../../support/storage/failing-put.ts';

let end = (): void => {};
afterEach(() => end());

const plus =
  (title: string) =>
  (before: Painting): Painting => ({ ...before, title: `${before.title} ${title}` });

test('a change that could not be kept is said, stays shown, and goes with the next, once', async () => {
  const store = await storeWith(meadow);
  const keeper = createPaintingKeeper({ store, retryMs: 1e6 });
  await keeper.open('meadow');
  end = failPuts('paintings', 'QuotaExceededError');
  await keeper.change(plus('one'));
  expect(keeper.problem.value).toMatch(/too little room/);
  expect(keeper.painting.value?.title).toBe('meadow one');
  expect((await store.painting('meadow'))?.title).toBe('meadow');
  await keeper.change(plus('two'));
  expect(keeper.problem.value).toBeNull();
  expect((await store.painting('meadow'))?.title).toBe('meadow one two');
  expect(keeper.painting.value?.title).toBe('meadow one two');
});

test('and is tried again by itself', async () => {
  const store = await storeWith(meadow);
  const keeper = createPaintingKeeper({ store, retryMs: 1 });
  await keeper.open('meadow');
  end = failPuts('paintings', 'QuotaExceededError', 2);
  await keeper.change(plus('one'));
  await expect.poll(async () => (await store.painting('meadow'))?.title).toBe('meadow one');
  await expect.poll(() => keeper.problem.value).toBeNull();
});

test('what waits is laid over what the store answers, and over the painting opened again', async () => {
  const store = await storeWith(meadow, { ...meadow, id: 'other', title: 'other' });
  const keeper = createPaintingKeeper({ store, retryMs: 1e6 });
  await keeper.open('meadow');
  end = failPuts('paintings', 'QuotaExceededError');
  await keeper.change(plus('one'));
  keeper.adopt({ ...meadow, planIds: ['p'] });
  expect(keeper.painting.value).toMatchObject({ title: 'meadow one', planIds: ['p'] });
  await keeper.open('other');
  keeper.adopt(meadow); // another one is on the screen
  expect(keeper.painting.value?.title).toBe('other');
  await keeper.open('meadow');
  expect(keeper.painting.value?.title).toBe('meadow one');
});

test('what can never be kept does not hold up the rest', async () => {
  const store = await storeWith(meadow);
  const keeper = createPaintingKeeper({ store, retryMs: 1e6 });
  await keeper.open('meadow');
  await keeper.change((before) => ({ ...before, createdAt: Number.NaN }));
  expect(keeper.problem.value).toMatch(/could not be worked out/);
  await keeper.change(plus('two'));
  expect(keeper.problem.value).toBeNull();
  expect(await store.painting('meadow')).toMatchObject({ title: 'meadow two', createdAt: 1 });
});

test('a decision that was not stored is said until it is, also after what follows is worked out', async () => {
  const store = await storeWith(meadow);
  const { studio } = studioOver(store);
  await studio.open('meadow');
  end = failPuts('paintings', 'QuotaExceededError', 2); // the decision, and the plan's own note of it
  await studio.decide(hour);
  expect(studio.problem.value).toMatch(/too little room/);
  expect(studio.painting.value?.decisions).toMatchObject([hour]);
  expect((await store.painting('meadow'))?.decisions).toEqual([]);
  await studio.decide({ kind: 'washes', count: 2 });
  expect(studio.problem.value).toBeNull();
  expect((await store.painting('meadow'))?.decisions).toMatchObject([
    hour,
    { kind: 'washes', count: 2 },
  ]);
});

test('a disk that did not answer once is asked again: nothing is said, nothing lost', async () => {
  const store = await storeWith(meadow);
  const { studio } = studioOver(store);
  await studio.open('meadow');
  end = failPuts('paintings', 'UnknownError');
  await studio.decide(hour);
  expect(studio.problem.value).toBeNull();
  expect((await store.painting('meadow'))?.decisions).toMatchObject([hour]);
  expect(store.saving.value).toBe('saved');
});
