import { describe, expect, test } from 'vitest';
import type { Tables, Transaction } from '../../../app/storage/schema.ts';
import { createSaveState, createTransactions } from '../../../app/storage/transactions.ts';

/** A write that ends when the test says so. */
function pending() {
  let keep = (): void => {};
  let fail = (): void => {};
  const write = new Promise<void>((resolve, reject) => {
    keep = resolve;
    fail = () => reject(new Error('no'));
  });
  return { write, keep, fail };
}

describe('what the screen says of saving', () => {
  test('one write under way is enough to say so; the last one done says saved', async () => {
    const { saving, underWay, track } = createSaveState();
    const [one, other] = [pending(), pending()];
    const ends = [track('one', one.write), track('other', other.write)];
    expect([saving.value, underWay.value]).toEqual(['saving', 2]);
    one.keep();
    await ends[0];
    expect([saving.value, underWay.value]).toEqual(['saving', 1]);
    other.keep();
    await ends[1];
    expect([saving.value, underWay.value]).toEqual(['saved', 0]);
  });

  test('a failure is said when nothing is under way, until the same thing is kept', async () => {
    const { saving, track } = createSaveState();
    const [plan, photo, again] = [pending(), pending(), pending()];
    const ends = [track('plan', plan.write), track('photo', photo.write)];
    plan.fail();
    await expect(ends[0]).rejects.toThrow('no');
    expect(saving.value).toBe('saving');
    photo.keep();
    await ends[1];
    expect(saving.value).toBe('failed');
    const last = track('plan', again.write);
    expect(saving.value).toBe('saving');
    again.keep();
    await last;
    expect(saving.value).toBe('saved');
  });

  test('nor does a write that began before the one that failed make up for it', async () => {
    const { saving, track } = createSaveState();
    const [early, late] = [pending(), pending()];
    const ends = [track('plan', early.write), track('plan', late.write)];
    late.fail();
    await expect(ends[1]).rejects.toThrow('no');
    early.keep();
    await ends[0];
    expect(saving.value).toBe('failed');
  });

  test('whoever waits for the writes goes on when the last has ended, well or not', async () => {
    const { settled, track } = createSaveState();
    await settled();
    const [one, other] = [pending(), pending()];
    const ends = [track('one', one.write), track('other', other.write)];
    const order: string[] = [];
    const waited = settled().then(() => order.push('settled'));
    one.keep();
    await ends[0];
    order.push('one');
    other.fail();
    await expect(ends[1]).rejects.toThrow();
    await waited;
    expect(order).toEqual(['one', 'settled']);
  });
});

describe('a row with a figure that is none', () => {
  /** Tables that only remember what was put. */
  function remembered() {
    const rows: unknown[] = [];
    const put = async (_table: unknown, row: unknown): Promise<void> => void rows.push(row);
    const tables = {
      run: (_access: unknown, _names: unknown, work: (t: Transaction) => Promise<unknown>) =>
        work({ put } as unknown as Transaction),
    } as unknown as Tables;
    const { write } = createTransactions(tables, createSaveState());
    const keep = (row: unknown) =>
      write('row', ['settings'], (t) => t.put('settings', row as never));
    return { rows, keep };
  }

  test.each([
    ['not a number', { plan: { loads: [1, Number.NaN] } }],
    ['endless', { plan: { minutes: Number.POSITIVE_INFINITY } }],
    ['endless below', [[-1 / 0]]],
  ])('%s, however deep: it is refused and nothing is put', async (_name, row) => {
    const { rows, keep } = remembered();
    await expect(keep(row)).rejects.toMatchObject({ kind: 'broken-figure' });
    expect(rows).toEqual([]);
  });

  test('all else is kept as it is, bytes too', async () => {
    const { rows, keep } = remembered();
    const row = {
      title: '',
      none: null,
      zero: -0,
      bytes: Float32Array.of(Number.NaN),
      raw: new ArrayBuffer(4),
    };
    await keep(row);
    expect(rows).toEqual([row]);
  });
});
