import { signal } from '@preact/signals';
import { describe, expect, test, vi } from 'vitest';
import type { AnalysisClient } from '../../../../app/client/analysis-client.ts';
import { emptyBox, type OwnBox, ownPaints } from '../../../../app/core/paint/own-box.ts';
import type { Paint, PaintCard } from '../../../../app/core/paint/paint.ts';
import { newPaint } from '../../../../app/core/paint/paint-draft.ts';
import { createPaintDrafts } from '../../../../app/state/paints/paint-drafts.ts';
import { faultOf } from '../../../support/state/made-store.ts';

const properties = {
  transparency: 'T',
  staining: 0,
  granulation: 1,
  lightfastness: 'good',
  caution: null,
} as const;
const card = {
  id: 'pb29-ultramarine-blue',
  name: 'ultramarine blue',
  ci: ['PB29'],
  properties,
} as unknown as PaintCard;
const hers = {
  id: 'own-1',
  revision: 1,
  name: 'my blue',
  ci: ['PB29'],
  K: [1],
  S: [2],
  properties,
  optics: { from: 'measured', sure: 1, why: '' },
} as unknown as Paint;

async function drafting(stored: unknown = null, own: readonly Paint[] = []) {
  const box = signal<OwnBox>({ ...emptyBox, paints: own });
  const kept: unknown[] = [];
  const store = {
    setting: async () => stored,
    keepSetting: vi.fn(async (_name: string, value: unknown) => {
      kept.push(value);
    }),
    unkeptSettings: signal(new Map()),
  };
  const client = {
    pigmentTable: vi.fn<AnalysisClient['pigmentTable']>(async () => [
      { ci: 'PB29', properties } as never,
    ]),
    opticsLike: vi.fn<AnalysisClient['opticsLike']>(async (_signal, id) =>
      id === card.id ? { K: [3], S: [4] } : null,
    ),
  };
  const change = vi.fn(async (how: (before: OwnBox) => OwnBox) => {
    box.value = how(box.value);
  });
  const state = createPaintDrafts({
    store,
    client,
    ownBox: { box, cards: signal([card]), change },
  });
  await state.open();
  return { state, box, kept, store, client, change };
}

describe('a new paint', () => {
  test('is typed letter by letter, every letter kept', async () => {
    const { state, kept } = await drafting();
    state.change(newPaint, { name: 'x' }); // not begun yet
    expect(kept).toEqual([]);
    state.begin(newPaint);
    state.change(newPaint, { name: 'my' });
    state.change(newPaint, { ci: 'PB29' });
    expect(kept.at(-1)).toMatchObject({ new: { name: 'my', ci: 'PB29', like: null } });
    expect(kept).toHaveLength(3);
    state.begin(newPaint); // goes on with the one begun
    expect(state.drafts.value.new?.name).toBe('my');
    state.drop(newPaint);
    expect(state.drafts.value).toEqual({});
  });

  test('goes into the box with the optics of the paint it behaves like, and its draft is gone', async () => {
    const { state, box } = await drafting();
    state.begin(newPaint);
    expect(await state.save(newPaint)).toBe(false); // nothing said yet
    state.change(newPaint, { name: 'my blue', ci: 'PB29' });
    expect(state.settle(newPaint)?.like).toBe(card.id);
    expect(await state.save(newPaint)).toBe(true);
    const [paint] = ownPaints(box.value);
    expect(paint).toMatchObject({
      name: 'my blue',
      ci: ['PB29'],
      K: [3],
      S: [4],
      optics: { from: 'like', id: card.id },
    });
    expect(paint?.id).toMatch(/^own-/);
    expect(state.drafts.value).toEqual({});
  });

  test('that can not be saved stays, and it is said', async () => {
    const { state, client, change } = await drafting();
    state.begin(newPaint);
    state.change(newPaint, { name: 'my blue', ci: 'PB29' });
    client.opticsLike.mockRejectedValueOnce(faultOf('AnalysisError', 'It stopped.'));
    expect(await state.save(newPaint)).toBe(false);
    expect(state.problem.value).toBe('It stopped.');
    expect(change).not.toHaveBeenCalled();
    expect(state.drafts.value.new?.name).toBe('my blue');
    expect(await state.save(newPaint)).toBe(true);
    expect(state.problem.value).toBeNull();
  });
});

describe('a paint of hers', () => {
  test('is changed from what it is; measured, it keeps its own optics and id', async () => {
    const { state, box, client } = await drafting(null, [hers]);
    state.begin('own-2'); // not hers
    expect(state.drafts.value).toEqual({});
    state.begin('own-1');
    expect(state.drafts.value['own-1']).toMatchObject({ name: 'my blue', ci: 'PB29', like: null });
    state.change('own-1', { name: 'my old blue' });
    expect(await state.save('own-1')).toBe(true);
    expect(client.opticsLike).not.toHaveBeenCalled();
    expect(ownPaints(box.value)).toMatchObject([
      {
        id: 'own-1',
        revision: 2,
        name: 'my old blue',
        K: [1],
        S: [2],
        optics: { from: 'measured' },
      },
    ]);
  });

  test('a draft of nothing settles to nothing', async () => {
    const { state } = await drafting();
    expect(state.settle('own-1')).toBeNull();
    expect(await state.save('own-1')).toBe(false);
  });
});

describe('what was kept', () => {
  const draft = { name: 'kept', ci: '', like: null, hers: {} };

  test.each([
    ['comes back', { new: draft }, ['new']],
    ['words are no drafts', 'drafts', []],
    ['nor is nothing', null, []],
    ['nor what has no name', { new: { ...draft, name: 1 } }, []],
    ['nor what has no pigments', { new: { ...draft, ci: undefined } }, []],
    ['nor one good and one spoilt', { new: draft, other: 7 }, []],
  ])('%s', async (_, stored, keys) => {
    expect(Object.keys((await drafting(stored)).state.drafts.value)).toEqual(keys);
  });

  test('what is known of pigments is asked for once', async () => {
    const { state, client } = await drafting();
    await state.open();
    expect(client.pigmentTable).toHaveBeenCalledTimes(1);
  });
});
