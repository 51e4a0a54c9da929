import { expect, test } from 'vitest';
import { createWorkTeller } from '../../../../app/state/paints/work-teller.ts';

/** A fault that comes with a sentence for the painter. */
const fault = (words: string): Error => Object.assign(new Error(words), { name: 'PhotoError' });

/** Work that ends, well or with a fault, when the test says so. */
function heldWork() {
  let end = (_fault?: Error): void => {};
  const signals: AbortSignal[] = [];
  const what = (signal: AbortSignal): Promise<void> =>
    new Promise((done, fail) => {
      signals.push(signal);
      end = (fault) => (fault ? fail(fault) : done());
    });
  return { what, signals, end: (fault?: Error) => end(fault) };
}

test('what is being done is said until it is done', async () => {
  const teller = createWorkTeller();
  const { what, end } = heldWork();
  const running = teller.run('Measuring', what);
  expect(teller.work.value).toBe('Measuring');
  end();
  await running;
  expect(teller.work.value).toBeNull();
  expect(teller.problem.value).toBeNull();
});

test('a fault is told, until something else is begun', async () => {
  const teller = createWorkTeller();
  await teller.run('Measuring', async () => {
    throw fault('The photo is too dark.');
  });
  expect(teller.work.value).toBeNull();
  expect(teller.problem.value).toBe('The photo is too dark.');
  const { what, end } = heldWork();
  const running = teller.run('Again', what);
  expect(teller.problem.value).toBeNull();
  end();
  await running;
});

test('what is begun later ends what was begun before, whose end, good or bad, says nothing more', async () => {
  for (const end of [undefined, fault('Late.')]) {
    const teller = createWorkTeller();
    const [first, second] = [heldWork(), heldWork()];
    const one = teller.run('First', first.what);
    const other = teller.run('Second', second.what);
    expect([first.signals[0]?.aborted, second.signals[0]?.aborted]).toEqual([true, false]);
    first.end(end);
    await one;
    expect([teller.work.value, teller.problem.value]).toEqual(['Second', null]);
    second.end();
    await other;
    expect(teller.work.value).toBeNull();
  }
});

test('stopped, it is silent at once', async () => {
  const teller = createWorkTeller();
  const { what, signals, end } = heldWork();
  const running = teller.run('Measuring', what);
  teller.stop();
  expect([teller.work.value, signals[0]?.aborted]).toEqual([null, true]);
  end(fault('Stopped.'));
  await running;
  expect(teller.problem.value).toBeNull();
  await teller.run('Again', async () => {
    throw fault('Too dark.');
  });
  teller.stop();
  expect(teller.problem.value).toBeNull();
});
