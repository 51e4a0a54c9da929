import { afterEach, expect, test } from 'vitest';
import { noteDraftName } from '../../../app/storage/sessions.ts';
import type { Trash } from '../../../app/storage/trash.ts';
import { madeStore } from '../../support/state/made-store.ts';
import { failPuts } from '../../support/storage/failing-put.ts';
import { newPlanSample, paintingSample, photoSample } from '../../support/storage/kept-samples.ts';

let end = (): void => {};
afterEach(() => end());

const dayMs = 24 * 60 * 60 * 1000;

test('a painting put away can be brought back for seven days; each counts from its own time', async () => {
  let clock = 100 * dayMs;
  const store = await madeStore({ readTimeMs: () => clock });
  for (const [id, updatedAt] of [
    ['a', 1],
    ['b', 2],
    ['c', 3],
    ['d', 4],
  ] as const)
    await store.addPainting(paintingSample(id, `of ${id}`, updatedAt), photoSample(`of ${id}`));
  const trash: Trash = store;
  const away = async () => (await trash.paintingsPutAway()).map(({ id }) => id);
  for (const id of ['b', 'a', 'c']) {
    clock += dayMs;
    await trash.putAway(id);
  }
  expect(await away()).toEqual(['c', 'a', 'b']); // the latest first
  // 'b' went on day 101, 'a' on day 102.
  clock = 108 * dayMs;
  expect(await trash.discardPutAway('old')).toBe(0);
  clock = 109 * dayMs;
  expect(await trash.discardPutAway('old')).toBe(1);
  expect(await away()).toEqual(['c', 'a']);
  expect([await store.photo('of b'), await store.painting('b')]).toEqual([null, null]);
  expect(await store.photo('of a')).not.toBeNull();
  await trash.bringBack('a');
  // Back in its place among the others, that of her last work.
  expect((await store.paintings()).map(({ painting }) => painting.id)).toEqual(['d', 'a']);
  expect((await store.painting('a'))?.updatedAt).toBe(1);
  expect(await trash.discardPutAway('all')).toBe(1);
  expect(await away()).toEqual([]);
  expect((await store.paintings()).map(({ painting }) => painting.id)).toEqual(['d', 'a']);
  store.close();
});

test('a draft that waits to be stored goes with its painting, and is no row without one later', async () => {
  const store = await madeStore({ retryMs: 1 });
  for (const id of ['meadow', 'other']) {
    await store.addPainting(paintingSample(id, `of ${id}`), photoSample(`of ${id}`));
    await store.keepPlan(id, newPlanSample(`plan of ${id}`));
    await store.sessionOf(id, `session of ${id}`);
  }
  const draft = noteDraftName('session of meadow');
  const others = noteDraftName('session of other');
  end = failPuts('settings', 'QuotaExceededError', Number.POSITIVE_INFINITY);
  for (const name of [draft, others])
    await expect(store.keepSetting(name, 'Less green')).rejects.toMatchObject({ kind: 'no-room' });
  await store.putAway('meadow');
  expect(await store.discardPutAway('all')).toBe(1);
  expect([...store.unkeptSettings.value.keys()]).toEqual([others]);
  end();
  await expect.poll(() => store.saving.value).toBe('saved'); // what waited has been tried again
  expect([await store.setting(draft), await store.setting(others)]).toEqual([null, 'Less green']);
  store.close();
});
