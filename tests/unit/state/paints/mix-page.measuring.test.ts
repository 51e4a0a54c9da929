import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import type { OwnBox } from '../../../../app/core/paint/own-box.ts';
import { createMixPage } from '../../../../app/state/paints/mix-page.ts';
import { keptSettings } from '../../../support/state/kept-settings.ts';
import { madeBox } from '../../../support/storage/made-backup.ts';

// A page of two paints has three squares: each alone, and both. What the worker answers is made here.
const patch = (n: number) => ({
  ...{ frame: { left: 0.2 * n, top: 0.1, width: 0.1, height: 0.1 } },
  ...{ lab: [80 - 10 * n, n, 0], evenness: n === 1 ? 'uneven' : 'even' },
});
const found = [0, 1, 2].map(patch);
const refined = [
  {
    id: 'own-blue',
    K: [1],
    S: [2],
    strength: 3,
    mostLoad: 4,
    told: { name: 'my blue', changes: ['stronger'] },
  },
  { id: 'gone', K: [1], S: [2], strength: 3, mostLoad: 4, told: { name: 'gone', changes: [] } },
];

function made(kept = new Map<string, unknown>()) {
  const asked: unknown[][] = [];
  const closed: number[] = [];
  const box = signal<OwnBox>({
    ...madeBox,
    strengthLessons: [
      ...(madeBox.strengthLessons ?? []),
      { ...madeBox.strengthLessons?.[0], paint: 'own-blue' } as never,
    ],
  });
  const problem = signal<string | null>(null);
  let photos = 0;
  const page = createMixPage({
    store: keptSettings(kept),
    client: {
      openPhoto: async () => {
        const photo = photos++;
        return { preview: { close: () => closed.push(photo) } };
      },
      measurePatches: async (_signal: AbortSignal, ...given: unknown[]) => {
        asked.push(given);
        return { patches: found, paper: [[0.9, 0.9]] };
      },
      refinePaints: async (_signal: AbortSignal, ...given: unknown[]) => {
        asked.push(given);
        return refined;
      },
    },
    ownBox: {
      ...{ box, problem },
      change: async (how: (before: OwnBox) => OwnBox) => {
        box.value = how(box.value);
      },
    },
  } as never);
  return { page, asked, closed, box, problem, kept };
}
const file = new Blob(['a page']);

test('at most six paints stand on a page, each once and last where it was taken last', () => {
  const { page } = made();
  for (const id of ['a', 'b', 'c', 'd', 'e', 'f', 'g']) page.choose(id, true);
  expect(page.chosen.value).toEqual(['a', 'b', 'c', 'd', 'e', 'f']);
  page.choose('a', true);
  expect(page.chosen.value).toEqual(['b', 'c', 'd', 'e', 'f', 'a']);
  page.choose('c', false);
  expect(page.chosen.value).toEqual(['b', 'd', 'e', 'f', 'a']);
});

test('squares are measured in their frames and told by their paints, beside her own that are on the page', async () => {
  const { page, asked, closed } = made();
  page.choose('own-blue', true);
  page.choose('pv19', true);
  await page.measure(); // no photo yet
  expect(asked).toEqual([]);
  await page.choosePhoto(file);
  expect(asked).toEqual([[file, null, null]]);
  expect(page.photo.value).toMatchObject({ file, paper: [[0.9, 0.9]] });
  expect(page.frames.value).toEqual(found.map(({ frame }) => ({ frame, is: null })));
  await page.measure();
  expect(asked[1]).toEqual([file, found.map(({ frame }) => frame), null]);
  const [squares, own, chosen] = asked[2] as [unknown, { id: string }[], unknown];
  expect(squares).toEqual([
    { lab: [80, 0, 0], paints: ['own-blue'], even: true },
    { lab: [70, 1, 0], paints: ['own-blue', 'pv19'], even: false },
    { lab: [60, 2, 0], paints: ['pv19'], even: true },
  ]);
  expect([own.map(({ id }) => id), chosen]).toEqual([['own-blue'], ['own-blue', 'pv19']]);
  expect(page.result.value).toBe(refined);
  // Whatever is changed after it lets the result go.
  page.place(page.frames.value);
  expect(page.result.value).toBeNull();
  await page.measure();
  page.choose('pv19', false);
  expect(page.result.value).toBeNull();
  await page.choosePhoto(file);
  expect(closed).toEqual([0]);
});

test('as many frames as squares are asked for', async () => {
  const { page, asked } = made();
  page.choose('own-blue', true);
  await page.choosePhoto(file);
  await page.measure();
  expect(page.problem.value).toMatch(/3 frames for 1 squares/);
  expect([asked.length, page.result.value]).toEqual([1, null]);
});

test('what was found goes into the box: a revision more of each paint that is there, its lessons forgotten', async () => {
  const { page, box, closed, kept } = made();
  expect(await page.keep()).toBe(false);
  page.choose('own-blue', true);
  page.choose('pv19', true);
  await page.choosePhoto(file);
  await page.measure();
  expect(await page.keep()).toBe(true);
  expect(box.value.paints).toHaveLength(madeBox.paints.length + 1);
  expect(box.value.paints.at(-1)).toMatchObject({
    id: 'own-blue',
    K: [1],
    strength: 3,
    mostLoad: 4,
    revision: 2,
  });
  expect(box.value.paints.at(-1)).not.toHaveProperty('told');
  expect(box.value.strengthLessons?.map(({ forgotten }) => forgotten)).toEqual([undefined, true]);
  expect([page.photo.value, page.result.value, page.frames.value, closed]).toEqual([
    null,
    null,
    [],
    [0],
  ]);
  expect(kept.get('mix page')).toEqual({ chosen: ['own-blue', 'pv19'], frames: [] });
});

test('where the box cannot be kept all stays as it is', async () => {
  const { page, problem } = made();
  page.choose('own-blue', true);
  page.choose('pv19', true);
  await page.choosePhoto(file);
  await page.measure();
  problem.value = 'No room is left.';
  expect(await page.keep()).toBe(false);
  expect([page.photo.value === null, page.result.value, page.frames.value.length]).toEqual([
    false,
    refined,
    3,
  ]);
});

test.each([
  null,
  'words',
  {},
  { chosen: [] },
  { chosen: 'a', frames: [] },
  { chosen: [], frames: {} },
])('%j kept for a page counts as none', async (stored) => {
  const { page } = made(new Map([['mix page', stored]]));
  await page.choosePhoto(file);
  expect(page.chosen.value).toEqual([]);
  expect(page.frames.value).toHaveLength(3);
});
