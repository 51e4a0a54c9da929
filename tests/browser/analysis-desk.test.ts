import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type AnalysisClient, createAnalysisClient } from '../../app/client/analysis-client.ts';

/** A worker made of a few lines; `seen` counts how many were started. */
const workerOf = (code: string) => {
  const url = URL.createObjectURL(new Blob([code], { type: 'text/javascript' }));
  const seen = { started: 0, ended: 0 };
  const createWorker = (): Worker => {
    seen.started += 1;
    const worker = new Worker(url);
    const terminate = worker.terminate.bind(worker);
    worker.terminate = () => {
      seen.ended += 1;
      terminate();
    };
    return worker;
  };
  return { createWorker, seen };
};

/** Answers Comlink's calls by hand: the message holds id, path and arguments. */
const answering = (body: string): string => `
  const answer = (id, value) => postMessage({ id, type: 'RAW', value });
  const fail = (id, name, message) => postMessage({ id, type: 'HANDLER', name: 'throw',
    value: { isError: true, value: { name, message, stack: '' } } });
  const throwRaw = (id, value) => postMessage({ id, type: 'HANDLER', name: 'throw',
    value: { isError: false, value } });
  onmessage = ({ data: { id, path, argumentList } }) => {
    const call = path[0];
    ${body}
  };`;

let client: AnalysisClient;
/** The desk's own patience is driven, so that nothing hangs on how soon a worker gets its turn. */
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'setInterval', 'clearInterval'] });
});
afterEach(() => {
  client.dispose();
  vi.useRealTimers();
});

const never = new AbortController().signal;
const aCall = (signal: AbortSignal = never) => client.openPhoto(signal, new Blob(['x']));

// A-WRK-1: never answers
test('a worker that says nothing fails its calls in words, and the next call gets a fresh one', async () => {
  const { createWorker, seen } = workerOf('onmessage = () => {}');
  client = createAnalysisClient({ createWorker, silenceMs: 300 });
  const asked = Promise.allSettled([aCall(), client.paintBox(never, [])]);
  vi.advanceTimersByTime(299);
  expect(seen).toEqual({ started: 1, ended: 0 });
  vi.advanceTimersByTime(100);
  const calls = await asked;
  for (const call of calls) {
    expect(call).toMatchObject({ status: 'rejected', reason: { name: 'AnalysisError' } });
    expect(String((call as PromiseRejectedResult).reason.message)).toMatch(/try again/);
  }
  expect(seen).toEqual({ started: 1, ended: 1 });
  const next = aCall();
  vi.advanceTimersByTime(400);
  await expect(next).rejects.toThrow(/try again/);
  expect(seen.started).toBe(2);
});

test('a worker that keeps giving signs of life is waited for', async () => {
  // A sign for every word to it, the answer when it is told so.
  const { createWorker, seen } = workerOf(`${answering('asked = id;')}
    let asked;
    const take = onmessage;
    onmessage = (event) => {
      if (event.data === 'a sign') postMessage({ sign: true });
      else if (event.data === 'the answer') answer(asked, []);
      else take(event);
    };`);
  let worker: Worker | undefined;
  client = createAnalysisClient({
    createWorker: () => {
      worker = createWorker();
      return worker;
    },
    silenceMs: 300,
  });
  const answered = client.paintBox(never, []);
  for (let turn = 0; turn < 4; turn++) {
    vi.advanceTimersByTime(250);
    const sign = new Promise((resolve) =>
      worker?.addEventListener('message', resolve, { once: true }),
    );
    worker?.postMessage('a sign');
    await sign;
  }
  expect(seen.ended).toBe(0);
  worker?.postMessage('the answer');
  expect(await answered).toEqual([]);
});

// A-WRK-1: dies in mid-work
test('a worker that dies in mid-work fails its calls in words', async () => {
  const { createWorker, seen } = workerOf(
    answering(`if (call === 'openPhoto') setTimeout(() => { throw new Error('oops'); }, 20);
      else answer(id, []);`),
  );
  client = createAnalysisClient({ createWorker });
  await expect(aCall()).rejects.toMatchObject({ name: 'AnalysisError' });
  expect(await client.paintBox(never, [])).toEqual([]);
  expect(seen.started).toBe(2);
});

// A-WRK-3
test('a worker script that is not there fails in words', async () => {
  client = createAnalysisClient({
    createWorker: () => new Worker('/no-such-worker.js', { type: 'module' }),
  });
  await expect(aCall()).rejects.toMatchObject({
    name: 'AnalysisError',
    message: expect.stringMatching(/could not be worked out/),
  });
});

test('a browser that refuses workers fails in words', async () => {
  client = createAnalysisClient({
    createWorker: () => {
      throw new DOMException('refused', 'SecurityError');
    },
  });
  await expect(aCall()).rejects.toMatchObject({ name: 'AnalysisError' });
});

test('an aborted caller is freed at once; a worker that answers the cancel lives on', async () => {
  const { createWorker, seen } = workerOf(
    answering(`if (call === 'cancel' || call === 'paintBox') answer(id, []);`),
  );
  client = createAnalysisClient({ createWorker, cancelMs: 100 });
  const abort = new AbortController();
  const call = aCall(abort.signal);
  abort.abort();
  await expect(call).rejects.toMatchObject({ name: 'AbortError' }); // no timer has moved
  // Answers come in the order of the calls: after this one the cancel has been answered.
  expect(await client.paintBox(never, [])).toEqual([]);
  vi.advanceTimersByTime(1000);
  expect(seen).toEqual({ started: 1, ended: 0 });
});

test('a worker deaf to the cancel is ended, and the other open call is sent to a fresh one', async () => {
  const { createWorker, seen } = workerOf(
    answering(`if (call === 'openPhoto') { for (;;) { /* stuck */ } }
      else answer(id, ['answered']);`),
  );
  client = createAnalysisClient({ createWorker, cancelMs: 250 });
  const abort = new AbortController();
  const stuck = aCall(abort.signal);
  const other = client.paintBox(never, []);
  abort.abort();
  await expect(stuck).rejects.toMatchObject({ name: 'AbortError' });
  vi.advanceTimersByTime(249);
  expect(seen).toEqual({ started: 1, ended: 0 });
  vi.advanceTimersByTime(1);
  expect(await other).toEqual(['answered']);
  expect(seen).toEqual({ started: 2, ended: 1 });
});

test('an already aborted signal starts nothing', async () => {
  const { createWorker, seen } = workerOf('');
  client = createAnalysisClient({ createWorker });
  await expect(aCall(AbortSignal.abort())).rejects.toMatchObject({ name: 'AbortError' });
  expect(seen.started).toBe(0);
});

// A-WRK-8
test.each([
  [`throwRaw(id, 'a string')`],
  ['throwRaw(id, undefined)'],
  [`fail(id, 'RangeError', 'offset is out of bounds')`],
  [`fail(id, 'InvalidStateError', '')`],
])('whatever a worker throws (%s) comes as a readable sentence', async (body) => {
  client = createAnalysisClient(workerOf(answering(body)));
  await expect(aCall()).rejects.toMatchObject({
    name: 'AnalysisError',
    message: expect.stringMatching(/^The picture could not be worked out/),
  });
});

test('a photo error keeps its name and its sentence', async () => {
  client = createAnalysisClient(
    workerOf(answering(`fail(id, 'PhotoError', 'The file is empty.')`)),
  );
  await expect(aCall()).rejects.toMatchObject({
    name: 'PhotoError',
    message: 'The file is empty.',
  });
});

test('putting the client away settles what is open', async () => {
  client = createAnalysisClient(workerOf('onmessage = () => {}'));
  const call = aCall();
  client.dispose();
  await expect(call).rejects.toMatchObject({ name: 'AbortError' });
});

/** A worker that sends pictures only once the caller has gone: the next call is what it waits for. */
const sendsLate = (send: string): string =>
  answering(`if (call === 'cancel') answer(id, undefined);
    else if (call === 'paintBox') createImageBitmap(new ImageData(2, 2)).then((bitmap) => {
      ${send}
      answer(id, []);
    });
    else { self.asked = id; self.given = argumentList; }`);

test.each([
  ['an answer', `answer(asked, { width: 2, height: 2, preview: bitmap });`],
  [
    'word in mid-job',
    `given[2].value.postMessage({ id: 'late', type: 'APPLY', path: [],
      argumentList: [{ type: 'RAW', value: { reference: bitmap } }] });`,
  ],
])('bitmaps that come as %s for a caller who has gone are given back', async (_, send) => {
  const close = vi.spyOn(ImageBitmap.prototype, 'close');
  client = createAnalysisClient(workerOf(sendsLate(send)));
  const abort = new AbortController();
  const onPictures = vi.fn();
  const request = {} as Parameters<AnalysisClient['read']>[1];
  const call = send.startsWith('given')
    ? client.read(abort.signal, request, onPictures, () => {})
    : aCall(abort.signal);
  abort.abort();
  await expect(call).rejects.toMatchObject({ name: 'AbortError' });
  expect(await client.paintBox(never, [])).toEqual([]);
  await vi.waitFor(() => expect(close).toHaveBeenCalledTimes(1));
  expect(onPictures).not.toHaveBeenCalled();
  close.mockRestore();
});
