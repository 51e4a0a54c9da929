import { signal } from '@preact/signals';
import { expect, test, vi } from 'vitest';
import { createToldOnce } from '../../../app/state/told-once.ts';

function storeWith(kept: unknown) {
  const rows = new Map<string, unknown>([['told once', kept]]);
  return {
    rows,
    setting: async (name: string) => rows.get(name) ?? null,
    keepSetting: async (name: string, value: unknown) => void rows.set(name, value),
    unkeptSettings: signal(new Map()),
  };
}

test('what was told is known in the next window, and told no more', async () => {
  const store = storeWith(null);
  const first = createToldOnce(store);
  expect(first.told.value).toBeNull(); // not known yet: nothing is told
  await vi.waitFor(() => expect(first.told.value).toEqual([]));
  first.tell('tap');
  first.tell('tap');
  const second = createToldOnce(store);
  await vi.waitFor(() => expect(second.told.value).toEqual(['tap']));
});

test('of a row spoilt in part what is whole counts, and nothing else is kept on', async () => {
  const store = storeWith(['tap', 7, null, { cut: 1 }, 'hold']);
  const { told, tell } = createToldOnce(store);
  await vi.waitFor(() => expect(told.value).toEqual(['tap', 'hold']));
  tell('drag');
  await vi.waitFor(() => expect(store.rows.get('told once')).toEqual(['tap', 'hold', 'drag']));
});

test('a spoilt row counts as nothing told; the oldest are forgotten', async () => {
  const spoilt = createToldOnce(storeWith({ tap: true }));
  await vi.waitFor(() => expect(spoilt.told.value).toEqual([]));
  for (let i = 0; i <= 200; i++) spoilt.tell(`cut ${i}`);
  expect(spoilt.told.value).toHaveLength(200);
  expect(spoilt.told.value).not.toContain('cut 0');
});
