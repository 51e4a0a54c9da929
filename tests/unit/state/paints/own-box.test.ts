import { describe, expect, test, vi } from 'vitest';
import {
  emptyBox,
  type FormerBox,
  type OwnBox,
  withTick,
} from '../../../../app/core/paint/own-box.ts';
import { renewBox } from '../../../../app/core/paint/renew-paints.ts';
import { createOwnBox } from '../../../../app/state/paints/own-box.ts';
import { StorageProblem } from '../../../../app/storage/storage-problem.ts';
import { madeStore } from '../../../support/state/made-store.ts';
import { failPuts } from '../../../support/storage/failing-put.ts';
import { bringBack, copyOf, madeBox } from '../../../support/storage/made-backup.ts';

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
      changeSetting: async (name, how) => {
        names.add(name);
        const value = how(kept.at(-1) ?? found);
        kept.push(value);
        return value;
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

describe('two windows, one box', () => {
  const anyClient = { paintBox: async () => [], renewBox: vi.fn() };
  const added = (id: string) => (before: OwnBox) => withTick(before, id, true);

  test('what the other window has kept since, or a copy has brought, is not written over', async () => {
    const store = await madeStore();
    const [here, there] = [createOwnBox(store, anyClient), createOwnBox(store, anyClient)];
    await Promise.all([here.ready, there.ready]);
    await bringBack(store, await boxCopy());
    await there.change(added('pbr7-burnt-sienna'));
    expect(there.box.value.owned).toEqual([...(madeBox.owned ?? []), 'pbr7-burnt-sienna']);
    expect(there.box.value.paints).toEqual(madeBox.paints);
    await Promise.all([here.change(added('a')), there.change(added('b')), here.change(added('c'))]);
    await here.readAgain();
    expect(new Set(here.box.value.owned)).toEqual(
      new Set([...(madeBox.owned ?? []), 'pbr7-burnt-sienna', 'a', 'b', 'c']),
    );
    expect(await store.setting('paint box')).toEqual(here.box.value);
  });

  test('a change that could not be kept stays shown, and goes with the next', async () => {
    const store = await madeStore();
    const state = createOwnBox(store, anyClient);
    await state.ready;
    const end = failPuts('settings', 'QuotaExceededError');
    await state.change(added('a'));
    end();
    expect([state.box.value.owned, state.problem.value]).toEqual([
      ['a'],
      expect.stringMatching(/too little room/),
    ]);
    await state.readAgain();
    expect(state.box.value.owned).toEqual(['a']);
    await state.change(added('b'));
    expect(await store.setting('paint box')).toMatchObject({ owned: ['a', 'b'] });
    expect(state.problem.value).toBeNull();
  });

  test('and is tried again by itself', async () => {
    const store = await madeStore();
    const onKept = vi.fn();
    const state = createOwnBox(store, anyClient, onKept, 1);
    await state.ready;
    const end = failPuts('settings', 'UnknownError', 3);
    await state.change(added('a'));
    expect([state.problem.value === null, store.saving.value]).toEqual([false, 'failed']);
    await expect.poll(() => state.problem.value).toBeNull();
    end();
    expect(await store.setting('paint box')).toMatchObject({ owned: ['a'] });
    expect([store.saving.value, onKept.mock.calls.length]).toEqual(['saved', 1]);
  });

  async function boxCopy(): Promise<Blob> {
    const source = await madeStore();
    await source.keepSetting('paint box', madeBox);
    return copyOf(source, { scope: { kind: 'box' } });
  }
});

test('what can never be kept is let go, and does not hold up what she changes next', async () => {
  const kept: OwnBox[] = [];
  const state = createOwnBox(
    {
      setting: async () => ticked,
      changeSetting: async (_name, how) => {
        const value = how(kept.at(-1) ?? ticked);
        if (JSON.stringify(value).includes('broken'))
          throw new StorageProblem('broken-figure', 'made to fail');
        kept.push(value as OwnBox);
        return value;
      },
    },
    { paintBox: async () => [], renewBox: async () => emptyBox },
  );
  await state.ready;
  await state.change((before) => ({ ...before, gone: ['broken'] }));
  expect([kept, state.problem.value === null]).toEqual([[], false]);
  await state.change((before) => withTick(before, 'pbr7-burnt-sienna', true));
  expect(kept.map(({ owned, gone }) => [owned, gone])).toEqual([
    [['pb29-ultramarine-blue', 'pbr7-burnt-sienna'], ['own-1']],
  ]);
  expect(state.problem.value).toBeNull();
  // Sent at once: the good one after it is kept all the same, and what was refused is said.
  await Promise.all([
    state.change((before) => ({ ...before, gone: ['broken'] })),
    state.change((before) => withTick(before, 'py43-yellow-ochre', true)),
  ]);
  expect(kept.at(-1)?.owned).toContain('py43-yellow-ochre');
  expect(state.problem.value).not.toBeNull();
  expect(kept.at(-1)).toEqual(state.box.value);
});
