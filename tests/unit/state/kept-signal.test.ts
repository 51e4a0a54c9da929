import { expect, test } from 'vitest';
import { keptSignal, type SettingStore } from '../../../app/state/kept-signal.ts';

type Words = readonly string[];
const parse = (kept: unknown, current: Words): Words =>
  Array.isArray(kept) ? [...kept, ...current] : current;

function storeWith(settings: Record<string, unknown>): SettingStore {
  return {
    setting: async (name) => settings[name] ?? null,
    keepSetting: async (name, value) => {
      settings[name] = value;
    },
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
  const kept = keptSignal({ setting: refused, keepSetting: refused }, 'words', parse, ['wet']);
  await kept.ready;
  expect(kept.current.value).toEqual(['wet']);
  await expect(kept.set(['damp'])).rejects.toThrow('the disk is full');
  expect(kept.current.value).toEqual(['damp']);
});
