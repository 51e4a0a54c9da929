import { signal } from '@preact/signals';
import { expect, test, vi } from 'vitest';
import { emptyBox } from '../../../../app/core/paint/own-box.ts';
import { createMixPage } from '../../../../app/state/paints/mix-page.ts';
import { StorageProblem } from '../../../../app/storage/storage-problem.ts';

const frame = { corners: [] } as never;
const found = { patches: [{ frame }, { frame }, { frame }], paper: [] };

function pageWith(settings: Map<string, unknown>) {
  const store = {
    setting: async (name: string) => settings.get(name) ?? null,
    keepSetting: async (name: string, value: unknown) => void settings.set(name, value),
    unkeptSettings: signal(new Map()),
  };
  const client = {
    openPhoto: vi.fn(async () => ({ preview: { close: () => {} } })),
    measurePatches: vi.fn(async () => found),
    refinePaints: vi.fn(),
  };
  const ownBox = { box: { value: emptyBox }, change: vi.fn(), problem: { value: null } };
  return createMixPage({ store, client, ownBox } as never);
}

test('the paints chosen and her frames are there again after a reload', async () => {
  const settings = new Map<string, unknown>();
  const first = pageWith(settings);
  first.choose('own-1', true);
  first.choose('own-2', true);
  await first.choosePhoto(new Blob());
  const moved = [{ frame: { corners: [[0.5, 0.5]] }, is: null }] as never;
  first.place(moved);

  const again = pageWith(settings);
  await vi.waitFor(() => expect(again.chosen.value).toEqual(['own-1', 'own-2']));
  expect(again.frames.value).toEqual(moved);
  await again.choosePhoto(new Blob()); // the photo itself is not kept
  expect(again.frames.value).toEqual(moved);
  await again.choosePhoto(new Blob()); // another one is looked at anew
  expect(again.frames.value).toHaveLength(3);
});

test('what can not be kept is said, and counts all the same', async () => {
  const store = {
    setting: async () => null,
    keepSetting: () => Promise.reject(new Error('full')),
    unkeptSettings: signal(new Map([['mix page', new StorageProblem('no-room')]])),
  };
  const ownBox = { box: { value: emptyBox }, change: vi.fn(), problem: { value: null } };
  const page = createMixPage({ store, client: {}, ownBox } as never);
  page.choose('own-1', true);
  expect(page.chosen.value).toEqual(['own-1']);
  await vi.waitFor(() => expect(page.problem.value).toMatch(/too little room/));
});
