import { effect } from '@preact/signals';
import { afterEach, expect, test, vi } from 'vitest';
import { createOwnAir } from '../../../app/state/own-air.ts';
import { createOwnBox } from '../../../app/state/paints/own-box.ts';
import { rescue } from '../../../app/state/rescue.ts';
import { openStore } from '../../../app/storage/open-store.ts';
import { easelOver, leaveEasels } from '../../support/state/made-easel.ts';
import { studioOver } from '../../support/state/made-studio.ts';
import { paintingSample, photoSample } from '../../support/storage/kept-samples.ts';
import 'fake-indexeddb/auto';

afterEach(leaveEasels);

const clear = (name: string): Promise<unknown> =>
  new Promise((done) => {
    indexedDB.deleteDatabase(name).onsuccess = done;
  });

let made = 0;

/** A painting on the screen, planned, and what rescues it. */
async function windowWithMeadow() {
  const name = `rescued ${made++}`;
  const store = await openStore({ name });
  await store.addPainting(paintingSample('meadow', 'photo'), photoSample('photo'));
  await store.addPainting(paintingSample('other', 'p2'), photoSample('p2'));
  const { studio } = studioOver(store);
  await studio.open('meadow');
  const it = await easelOver(store);
  const ownBox = createOwnBox(store, { paintBox: async () => [], renewBox: vi.fn() });
  await ownBox.change((before) => ({ ...before, owned: ['pb29-ultramarine-blue'] }));
  const needs = { store, studio, easel: it.easel, ownBox, ownAir: createOwnAir(store) };
  effect(() => {
    if (store.trouble.value?.kind === 'gone') queueMicrotask(() => void rescue(needs));
  });
  return { name, store, studio, it };
}

test('all cleared at the easel: painting, plan, reading, log and box are kept again, and it is said', async () => {
  const { name, store, studio, it } = await windowWithMeadow();
  await it.easel.open('meadow');
  it.press(2);
  await store.settled();
  await clear(name);
  await expect.poll(() => store.trouble.value?.kind).toBe('kept-again'); // without a tap of hers
  it.press(1);
  await expect.poll(() => it.easel.savedWord.value).toBe('saved');
  const sessionId = it.easel.desk.value?.sessionId ?? '';
  store.close();

  const later = await openStore({ name });
  expect(await later.events(sessionId)).toEqual(it.easel.log.value);
  expect(await later.painting('meadow')).toMatchObject({ sessionIds: [sessionId] });
  expect((await later.session(sessionId)).plan).toEqual(it.easel.desk.value?.plan);
  expect(await later.setting('paint box')).toMatchObject({ owned: ['pb29-ultramarine-blue'] });
  expect((await later.cards()).map(({ id }) => id)).toEqual(['meadow']);
  const again = studioOver(later);
  await again.studio.open('meadow');
  expect(again.studio.plan.value).toEqual(studio.plan.value);
  expect([again.client.read.mock.calls.length, again.studio.problem.value]).toEqual([0, null]);
  // What needs the photo's bytes says what is missing.
  await again.studio.decide({ kind: 'bands', count: 3 });
  expect(again.studio.problem.value).toMatch(/photo of this painting is no longer on this device/);
  later.close();
});

test('at the plan: the painting without a session', async () => {
  const { name, store, studio } = await windowWithMeadow();
  await clear(name);
  await expect.poll(() => store.trouble.value?.kind).toBe('kept-again');
  expect(store.trouble.value?.message).toMatch(/saved again, but not its photo/);
  expect(await store.painting('meadow')).toMatchObject({
    planIds: [studio.plan.value?.id],
    sessionIds: [],
  });
  store.close();
});

test('with nothing open it says that all is gone', async () => {
  const { name, store, studio } = await windowWithMeadow();
  await studio.open('none');
  await clear(name);
  await expect.poll(() => store.trouble.value?.kind).toBe('gone');
  await expect.poll(() => store.setting('paint box')).not.toBeNull();
  expect([store.trouble.value?.kind, await store.cards()]).toEqual(['gone', []]);
  store.close();
});
