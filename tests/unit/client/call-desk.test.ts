import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import { createCallDesk } from '../../../app/client/call-desk.ts';

setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc') as () => void;

/** A worker that is busy and hears nothing. */
function busyWorker() {
  let ended = 0;
  const worker = Object.assign(new EventTarget(), {
    postMessage() {},
    terminate() {
      ended++;
    },
  });
  return { worker: worker as unknown as Worker, ended: () => ended };
}

test('a worker ended in the middle of a call lets go of whoever asked', async () => {
  const busy = busyWorker();
  const desk = createCallDesk({
    createWorker: () => busy.worker,
    cancelMs: 1,
    silenceMs: 60_000,
  });
  /** As a screen does that is left before its picture is worked out. */
  function ask(): WeakRef<object> {
    const screen = { canvases: new Array<number>(1000).fill(1) };
    const leaving = new AbortController();
    desk
      .call(leaving.signal, (api, job) => api.washShapes(job, screen as never))
      .then(
        () => screen.canvases.push(2),
        () => undefined,
      );
    leaving.abort();
    return new WeakRef(screen);
  }
  const asked = ask();
  await expect.poll(busy.ended).toBe(1);
  await expect
    .poll(() => {
      collectGarbage();
      return asked.deref();
    })
    .toBeUndefined();
  desk.dispose();
});
