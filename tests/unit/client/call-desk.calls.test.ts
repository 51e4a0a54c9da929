import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { createCallDesk } from '../../../app/client/call-desk.ts';

interface Asked {
  readonly id: string;
  readonly call: string;
}

/** A worker driven by hand: what it was asked, and answers in Comlink's way. */
class MadeWorker extends EventTarget {
  readonly asked: Asked[] = [];
  ended = 0;

  postMessage({ id, path }: { id: string; path?: readonly string[] }): void {
    if (path?.[0]) this.asked.push({ id, call: path[0] });
  }
  terminate(): void {
    this.ended++;
  }
  #send(data: unknown): void {
    this.dispatchEvent(new MessageEvent('message', { data }));
  }
  /** Answers the last call of that name. */
  answer(call: string, value: unknown): void {
    const { id } = this.asked.findLast((each) => each.call === call) as Asked;
    this.#send({ id, type: 'RAW', value });
  }
  fail(call: string, name: string): void {
    const { id } = this.asked.findLast((each) => each.call === call) as Asked;
    const value = { isError: true, value: { name, message: `${name} of the worker`, stack: '' } };
    this.#send({ id, type: 'HANDLER', name: 'throw', value });
  }
  sign(): void {
    this.#send({});
  }
  counted(call: string): number {
    return this.asked.filter((each) => each.call === call).length;
  }
}

const silenceMs = 6000;
const cancelMs = 100;
const never = new AbortController().signal;

function openDesk() {
  const workers: MadeWorker[] = [];
  const desk = createCallDesk({
    createWorker: () => {
      const worker = new MadeWorker();
      workers.push(worker);
      return worker as unknown as Worker;
    },
    ...{ cancelMs, silenceMs },
  });
  desks.push(desk);
  const paints = (signal = never, discard?: (late: unknown) => void): Promise<unknown> =>
    desk.call<unknown>(signal, (api, job) => api.paintBox(job, []), discard);
  const shapes = (signal = never): Promise<unknown> =>
    desk.call(signal, (api, job) => api.washShapes(job, {} as never));
  return { desk, workers, paints, shapes };
}

const desks: { dispose(): void }[] = [];
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
});
afterEach(() => {
  for (const desk of desks.splice(0)) desk.dispose();
  vi.useRealTimers();
});
/** Until what was sent has been taken: promises alone, no clock. */
const settled = async (): Promise<void> => {
  for (let turn = 0; turn < 20; turn++) await Promise.resolve();
};

test('calls are answered by one worker, each with its own answer and a number of its own', async () => {
  const { desk, workers, paints, shapes } = openDesk();
  expect(workers).toHaveLength(0); // none before it is needed
  const both = [paints(), shapes()];
  expect([desk.isOpen(0), desk.isOpen(1), desk.isOpen(2), desk.isOpen(3)]).toEqual([
    ...[false, true, true, false],
  ]);
  workers[0]?.answer('washShapes', 'shapes');
  workers[0]?.answer('paintBox', 'paints');
  expect(await Promise.all(both)).toEqual(['paints', 'shapes']);
  expect([desk.isOpen(1), desk.isOpen(2)]).toEqual([false, false]);
  const third = paints();
  expect(desk.isOpen(3)).toBe(true);
  workers[0]?.answer('paintBox', 3);
  expect(await third).toBe(3);
  expect([workers.length, workers[0]?.ended]).toEqual([1, 0]);
});

test.each(['PhotoError', 'CropError', 'BrowserError', 'WishError', 'AbortError'])(
  'a %s of the worker is told as it is',
  async (name) => {
    const { workers, paints } = openDesk();
    const call = paints();
    workers[0]?.fail('paintBox', name);
    await expect(call).rejects.toMatchObject({ name, message: `${name} of the worker` });
  },
);

test('any other error of it is told in words, with what it was as the cause', async () => {
  const { workers, paints } = openDesk();
  const call = paints();
  workers[0]?.fail('paintBox', 'TypeError');
  await expect(call).rejects.toMatchObject({
    ...{ name: 'AnalysisError', message: expect.stringMatching(/try again/) },
    cause: { name: 'TypeError' },
  });
  expect(workers[0]?.ended).toBe(0);
});

test('a browser that refuses the worker fails the call in words', async () => {
  const desk = createCallDesk({
    createWorker: () => {
      throw new Error('no workers here');
    },
    ...{ cancelMs, silenceMs },
  });
  const call = desk.call(never, (api, job) => api.paintBox(job, []));
  await expect(call).rejects.toMatchObject({ name: 'AnalysisError' });
  expect(desk.isOpen(1)).toBe(false);
});

test('who has left before asking is told so and starts no worker', async () => {
  const { desk, workers, paints } = openDesk();
  await expect(paints(AbortSignal.abort('gone'))).rejects.toBe('gone');
  expect([workers.length, desk.isOpen(1)]).toEqual([0, false]);
});

test('who leaves is free at once, and a worker that answers the cancel goes on with the others', async () => {
  const { desk, workers, paints, shapes } = openDesk();
  const leaving = new AbortController();
  const [left, kept] = [paints(leaving.signal), shapes()];
  leaving.abort('left');
  await expect(left).rejects.toBe('left');
  expect([desk.isOpen(1), desk.isOpen(2)]).toEqual([false, true]);
  expect(workers[0]?.counted('cancel')).toBe(1);
  workers[0]?.answer('cancel', undefined);
  await settled();
  vi.advanceTimersByTime(5 * cancelMs);
  expect([workers.length, workers[0]?.ended]).toEqual([1, 0]);
  workers[0]?.answer('washShapes', 'shapes');
  expect(await kept).toBe('shapes');
  leaving.abort(); // once is enough
  expect(workers[0]?.counted('cancel')).toBe(1);
});

test('a worker that does not answer the cancel is ended, and the others are asked again of a fresh one', async () => {
  const { workers, paints, shapes } = openDesk();
  const leaving = new AbortController();
  const [left, kept] = [paints(leaving.signal), shapes()];
  leaving.abort('left');
  await expect(left).rejects.toBe('left');
  vi.advanceTimersByTime(cancelMs - 1);
  expect([workers.length, workers[0]?.ended]).toEqual([1, 0]);
  vi.advanceTimersByTime(1);
  expect([workers.length, workers[0]?.ended]).toEqual([2, 1]);
  expect([workers[1]?.counted('washShapes'), workers[1]?.counted('paintBox')]).toEqual([1, 0]);
  // What the ended one says late counts for nothing.
  workers[0]?.answer('washShapes', 'late');
  workers[1]?.answer('washShapes', 'fresh');
  expect(await kept).toBe('fresh');
});

test('an answer nobody waits for is given back to be put away', async () => {
  const { workers, paints } = openDesk();
  const leaving = new AbortController();
  const put: unknown[] = [];
  const left = paints(leaving.signal, (late) => put.push(late));
  leaving.abort('left');
  await expect(left).rejects.toBe('left');
  workers[0]?.answer('paintBox', 'late');
  await settled();
  expect(put).toEqual(['late']);
  const silent = new AbortController();
  const without = paints(silent.signal);
  silent.abort('left');
  workers[0]?.answer('paintBox', 'late');
  await expect(without).rejects.toBe('left');
});

test.each(['error', 'messageerror'])(
  'a worker with an %s fails all calls in words and is ended; the next call has a fresh one',
  async (kind) => {
    const { workers, paints, shapes } = openDesk();
    const calls = Promise.allSettled([paints(), shapes()]);
    const event = new Event(kind, { cancelable: true });
    workers[0]?.dispatchEvent(event);
    expect(event.defaultPrevented).toBe(true);
    for (const call of await calls)
      expect(call).toMatchObject({
        status: 'rejected',
        reason: { name: 'AnalysisError', cause: event },
      });
    expect(workers[0]?.ended).toBe(1);
    // Its last words reach nobody, not even those who ask the next one.
    const next = paints();
    workers[0]?.dispatchEvent(new Event(kind, { cancelable: true }));
    workers[1]?.answer('paintBox', 'fresh');
    expect(await next).toBe('fresh');
    expect([workers.length, workers[1]?.ended]).toEqual([2, 0]);
  },
);

test('a worker that says nothing for the time of silence, and a sixth of it more, fails its calls', async () => {
  const { workers, paints } = openDesk();
  const call = Promise.allSettled([paints()]);
  vi.advanceTimersByTime(silenceMs + silenceMs / 6 - 1);
  expect(workers[0]?.ended).toBe(0);
  vi.advanceTimersByTime(1);
  expect(workers[0]?.ended).toBe(1);
  expect((await call)[0]).toMatchObject({ reason: { name: 'AnalysisError' } });
});

test('any sign of life begins the silence anew, as a new call does where none was open', async () => {
  const { workers, paints } = openDesk();
  const call = paints();
  for (let turn = 0; turn < 5; turn++) {
    vi.advanceTimersByTime(silenceMs);
    workers[0]?.sign();
  }
  expect(workers[0]?.ended).toBe(0);
  vi.advanceTimersByTime(silenceMs);
  workers[0]?.answer('paintBox', 1);
  expect(await call).toBe(1);
  // With no call open nobody listens: that is no silence.
  vi.advanceTimersByTime(10 * silenceMs);
  expect([workers[0]?.ended, vi.getTimerCount()]).toEqual([0, 0]);
  const next = paints();
  vi.advanceTimersByTime(silenceMs);
  workers[0]?.answer('paintBox', 2);
  expect(await next).toBe(2);
});

test('a desk that is put away tells all who wait, and ends its worker', async () => {
  const { desk, workers, paints, shapes } = openDesk();
  const calls = Promise.allSettled([paints(), shapes()]);
  desk.dispose();
  for (const call of await calls)
    expect(call).toMatchObject({ status: 'rejected', reason: { name: 'AbortError' } });
  expect([workers[0]?.ended, vi.getTimerCount()]).toEqual([1, 0]);
});
