import 'fake-indexeddb/auto';
import { signal } from '@preact/signals';
import { afterEach, expect, test } from 'vitest';
import { keptSignal, type SettingStore } from '../../../app/state/kept-signal.ts';
import { openStore } from '../../../app/storage/open-store.ts';
import { failPuts } from '../../support/storage/failing-put.ts';

let end = (): void => {};
afterEach(() => end());

type Words = readonly string[];
const parse = (kept: unknown, current: Words): Words =>
  Array.isArray(kept) ? [...kept, ...current] : current;

function storeWith(settings: Record<string, unknown>): SettingStore {
  return {
    setting: async (name) => settings[name] ?? null,
    keepSetting: async (name, value) => {
      settings[name] = value;
    },
    unkeptSettings: signal(new Map()),
  };
}

test('the value is the first one until what was kept is there', async () => {
  const kept = keptSignal(storeWith({ words: ['wet'], others: ['dry'] }), 'words', parse, []);
  expect(kept.current.value).toEqual([]);
  await kept.ready;
  expect(kept.current.value).toEqual(['wet']);
});

test('what was set before the store answered takes part in what counts then', async () => {
  const kept = keptSignal(storeWith({ words: ['wet'] }), 'words', parse, []);
  const set = kept.set(['damp']);
  expect(kept.current.value).toEqual(['damp']);
  await Promise.all([set, kept.ready]);
  expect(kept.current.value).toEqual(['wet', 'damp']);
});

test('a value set is shown at once and kept under its name', async () => {
  const settings: Record<string, unknown> = {};
  const kept = keptSignal(storeWith(settings), 'words', parse, []);
  await kept.ready;
  const set = kept.set(['damp']);
  expect(kept.current.value).toEqual(['damp']);
  await set;
  expect(settings).toEqual({ words: ['damp'] });
});

test('where nothing can be read or kept the value counts all the same', async () => {
  const refused = async (): Promise<never> => {
    throw new Error('the disk is full');
  };
  const store = { setting: refused, keepSetting: refused, unkeptSettings: signal(new Map()) };
  const kept = keptSignal(store, 'words', parse, ['wet']);
  await kept.ready;
  expect(kept.current.value).toEqual(['wet']);
  await expect(kept.set(['damp'])).rejects.toThrow('the disk is full');
  expect(kept.current.value).toEqual(['damp']);
});

test('why it is not kept is said for as long as it waits, and not of others', async () => {
  const store = await openStore({ name: 'kept signal', retryMs: 1 });
  const [words, others] = ['words', 'others'].map((name) => keptSignal(store, name, parse, []));
  await Promise.all([words?.ready, others?.ready]);
  end = failPuts('settings', 'QuotaExceededError', 2);
  await expect(words?.set(['damp'])).rejects.toThrow(/too little room/);
  expect([words?.problem.value, others?.problem.value]).toEqual([
    expect.stringMatching(/too little room/),
    null,
  ]);
  await expect.poll(() => words?.problem.value).toBeNull();
  expect(await store.setting('words')).toEqual(['damp']);
});
