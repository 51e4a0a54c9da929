import { describe, expect, test } from 'vitest';
import { emptyBox, type OwnBox } from '../../../../app/core/paint/own-box.ts';
import { createOwnBox } from '../../../../app/state/paints/own-box.ts';

/** The state over what was kept under the box's name; `kept` is what is kept of it since. */
async function boxOver(found: unknown) {
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
    { paintBox: async () => [] },
  );
  await state.ready;
  return { state, kept, names };
}

const ticked: OwnBox = { schema: 1, owned: ['pb29-ultramarine-blue'], paints: [], gone: ['own-1'] };

describe('what was kept of her paint box', () => {
  test('comes back', async () => {
    expect((await boxOver(ticked)).state.box.value).toEqual(ticked);
  });

  test.each([
    ['nothing', null],
    ['nothing at all', undefined],
    ['words', 'paint box'],
    ['a list', ['pb29-ultramarine-blue']],
    ['of a later version', { ...ticked, schema: 2 }],
    ['of no version', { ...ticked, schema: undefined }],
    ['without its lists', { schema: 1 }],
    ['with words for a list of ticks', { ...ticked, owned: 'pb29-ultramarine-blue' }],
    ['with no paints', { ...ticked, paints: null }],
    ['with a number for what is gone', { ...ticked, gone: 1 }],
  ])('is %s: refused, all paints count, and the box can be used', async (_name, found) => {
    const { state, kept, names } = await boxOver(found);
    expect(state.box.value).toEqual(emptyBox);
    await state.open();
    await state.change((before) => ({ ...before, owned: ['pbr7-burnt-sienna'] }));
    expect(kept).toEqual([{ ...emptyBox, owned: ['pbr7-burnt-sienna'] }]);
    expect(names.size).toBe(1);
    expect(state.problem.value).toBeNull();
  });
});
