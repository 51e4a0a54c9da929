const running = new Map<number, { cancelled: boolean }>();

const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();

/**
 * One turn of the event loop, so that a cancel gets in. A message, for a timer is held back to 4 ms
 * after a few in a row (HTML standard, timers).
 */
export const nextTurn = (): Promise<void> =>
  new Promise((resolve) => {
    waiting.push(resolve);
    channel.port2.postMessage(null);
  });

const idle: (() => void)[] = [];

/** A turn for work ahead of need: it comes when no job is running, so that nobody waits for it. */
export async function idleTurn(): Promise<void> {
  await nextTurn();
  while (running.size > 0) await new Promise<void>((resolve) => idle.push(resolve));
}

function cancelledError(): Error {
  const error = new Error('The job was cancelled.');
  error.name = 'AbortError';
  return error;
}

/** Marks a running job; its next `pause` throws. A job that is over is left alone. */
export function cancelJob(job: number): void {
  const found = running.get(job);
  if (found) found.cancelled = true;
}

/**
 * Runs the work of one job. `pause` is to be awaited between pieces of some milliseconds: it lets
 * messages in and throws an `AbortError` once the job is cancelled.
 */
export async function runJob<T>(
  job: number,
  work: (pause: () => Promise<void>) => Promise<T>,
): Promise<T> {
  const state = { cancelled: false };
  running.set(job, state);
  try {
    return await work(async () => {
      await nextTurn();
      if (state.cancelled) throw cancelledError();
    });
  } finally {
    running.delete(job);
    if (running.size === 0) for (const go of idle.splice(0)) go();
  }
}
