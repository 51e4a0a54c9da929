import { describe, expect, test } from 'vitest';
import { emptyBox, type FormerBox, type OwnBox } from '../../../../app/core/paint/own-box.ts';
import { renewBox } from '../../../../app/core/paint/renew-paints.ts';
import { createOwnBox } from '../../../../app/state/paints/own-box.ts';

/** The state over what was kept under the box's name; `kept` is what is kept of it since. */
async function boxOver(found: unknown, renew: (box: FormerBox) => Promise<OwnBox> = renewBox) {
  const kept: unknown[] = [];
  const names = new Set<string>();
  const state = createOwnBox(
    {
      setting: async (name) => {
        names.add(name);
        return found;
      },
      keepSetting: async (name, value) => {
        names.add(name);
        kept.push(value);
      },
    },
    { paintBox: async () => [], renewBox: async (_signal, box) => renew(box) },
  );
  await state.ready;
  return { state, kept, names };
}

const ticked: OwnBox = { schema: 2, owned: ['pb29-ultramarine-blue'], paints: [], gone: ['own-1'] };

describe('what was kept of her paint box', () => {
  test('comes back', async () => {
    expect((await boxOver(ticked)).state.box.value).toEqual(ticked);
  });

  test.each([
    ['nothing', null],
    ['nothing at all', undefined],
    ['words', 'paint box'],
    ['a list', ['pb29-ultramarine-blue']],
    ['of a later version', { ...ticked, schema: 3 }],
    ['of no version', { ...ticked, schema: undefined }],
    ['without its lists', { schema: 2 }],
    ['with words for a list of ticks', { ...ticked, owned: 'pb29-ultramarine-blue' }],
    ['with no paints', { ...ticked, paints: null }],
    ['with a number for what is gone', { ...ticked, gone: 1 }],
  ])('is %s: refused, as if nothing was ticked, and the box can be used', async (_name, found) => {
    const { state, kept, names } = await boxOver(found);
    expect(state.box.value).toEqual(emptyBox);
    await state.open();
    await state.change((before) => ({ ...before, owned: ['pbr7-burnt-sienna'] }));
    expect(kept).toEqual([{ ...emptyBox, owned: ['pbr7-burnt-sienna'] }]);
    expect(names.size).toBe(1);
    expect(state.problem.value).toBeNull();
  });
});

describe('a box kept by an earlier version', () => {
  const former: FormerBox = { ...ticked, schema: 1 };

  test('is brought up to date once, and kept so', async () => {
    const { state, kept } = await boxOver(former);
    expect(state.box.value).toEqual(ticked);
    expect(kept).toEqual([ticked]);
    await state.change((before) => before);
    expect(kept).toEqual([ticked, ticked]);
  });

  test('is not touched while that fails; the next change tries again', async () => {
    let tries = 0;
    const { state, kept } = await boxOver(former, async (box) => {
      if (++tries < 3) throw new Error('no worker');
      return renewBox(box);
    });
    expect(state.problem.value).not.toBeNull();
    const addTick = (before: OwnBox) => ({ ...before, owned: [...(before.owned ?? []), 'x'] });
    await state.change(addTick);
    expect(kept).toEqual([]);
    await state.change(addTick);
    expect(kept.at(-1)).toEqual({ ...ticked, owned: ['pb29-ultramarine-blue', 'x'] });
    expect(state.problem.value).toBeNull();
  });
});
