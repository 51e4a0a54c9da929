import { expect, test, vi } from 'vitest';
import { arrivalsInWords } from '../../../../app/state/backup/arrival-words.ts';
import { createBringBack } from '../../../../app/state/backup/bring-back.ts';
import { copyTimes } from '../../../../app/state/backup/copy-reminder.ts';
import type { HandOut } from '../../../../app/state/backup/hand-out.ts';
import { createKeepCopy } from '../../../../app/state/backup/keep-copy.ts';
import { madeStore } from '../../../support/state/made-store.ts';
import { fillStore } from '../../../support/storage/made-backup.ts';

const everything = { scope: { kind: 'everything' }, title: '', places: false } as const;

async function made(handed: Partial<HandOut> = {}) {
  const store = await madeStore({ readTimeMs: () => 7000 });
  const handOut: HandOut = {
    canShare: () => false,
    share: async () => true,
    save: async () => true,
    ...handed,
  };
  const readTimeMs = () => Date.UTC(2026, 10, 30, 12);
  return { store, keepCopy: createKeepCopy({ store, handOut, app: 'a test', readTimeMs }) };
}

test('a copy is made, handed out, and only then noted; it comes back in another place', async () => {
  const { store, keepCopy } = await made();
  await fillStore(store);
  await keepCopy.make(everything);
  const file = keepCopy.made.value?.file;
  expect(file?.name).toBe('Firstwash 2026-11-30.zip');
  expect(keepCopy.part.value).toBeNull();
  expect((await copyTimes(store)).copyAt).toBe(0);
  await keepCopy.save();
  expect((await copyTimes(store)).copyAt).toBeGreaterThan(0);

  const other = await madeStore();
  const onBrought = vi.fn(async () => {});
  let painting = true;
  const bringBack = createBringBack({
    store: other,
    inSessionAnywhere: async () => painting,
    onBrought,
  });
  await bringBack.open(file ?? new Blob());
  expect(arrivalsInWords(bringBack.checked.value?.paintings ?? [])).toEqual([
    'a and b: not here yet, come back.',
  ]);
  await bringBack.bring('merge');
  expect(bringBack.problem.value).toMatch(/Finish there/);
  expect(await other.cards()).toEqual([]);
  painting = false;
  await bringBack.bring('merge');
  expect(bringBack.done.value).toBe(true);
  expect(onBrought).toHaveBeenCalledOnce();
  expect((await other.cards()).length).toBe(2);
});

test('a copy of one painting is called by it, in a name every device takes, and is not noted', async () => {
  const { store, keepCopy } = await made();
  await fillStore(store);
  const title = 'seed/heads: "last" light\u0000 …';
  await keepCopy.make({ scope: { kind: 'painting', id: 'a' }, title, places: false });
  expect(keepCopy.made.value?.file.name).toBe('Firstwash seed heads last light 2026-11-30.zip');
  await keepCopy.save();
  expect((await copyTimes(store)).copyAt).toBe(0);
});

test('what is left of a painting goes out under a name of its own, by itself, and is not noted', async () => {
  const { store, keepCopy } = await made();
  await fillStore(store);
  await keepCopy.make({ scope: { kind: 'remains', id: 'a' }, title: 'seed heads', places: false });
  expect(keepCopy.problem.value).toBeNull();
  expect(keepCopy.made.value).toMatchObject({ scope: { kind: 'remains' }, paintings: 0 });
  expect(keepCopy.made.value?.file.name).toBe('Firstwash remains of seed heads 2026-11-30.zip');
  await keepCopy.save();
  expect((await copyTimes(store)).copyAt).toBe(0);
});

test('a sheet she closed, and a place that is full, leave the copy to be tried again', async () => {
  const { store, keepCopy } = await made({
    share: async () => false,
    save: async () => {
      throw Object.assign(new Error('The copy could not be written.'), { name: 'BackupError' });
    },
  });
  await fillStore(store);
  await keepCopy.make(everything);
  await keepCopy.share();
  expect([keepCopy.handedOut.value, keepCopy.problem.value]).toEqual(['', null]);
  await keepCopy.save();
  expect(keepCopy.problem.value).toBe('The copy could not be written.');
  expect(keepCopy.made.value).not.toBeNull();
  expect((await copyTimes(store)).copyAt).toBe(0);
});

test('nothing to copy, and what is stopped, are told apart', async () => {
  const { store, keepCopy } = await made();
  await keepCopy.make(everything);
  expect(keepCopy.problem.value).toMatch(/nothing to copy yet/);
  await fillStore(store);
  const making = keepCopy.make(everything);
  keepCopy.stop();
  await making;
  expect([keepCopy.problem.value, keepCopy.made.value, keepCopy.part.value]).toEqual([
    ...[null, null, null],
  ]);
});
