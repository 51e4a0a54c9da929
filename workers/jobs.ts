import * as Comlink from 'comlink';
import type { ProgressPhase } from '../app/core/reading/reading.ts';
import type { OnPictures, OnProgress, Pictures } from './api.ts';

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

/** At most one message in this time, ms: more is not seen and only costs. */
const restMs = 40;

interface ProgressTeller {
  tell(part: number, stage: ProgressPhase): void;
  /** Closes the way to the page; without it ports pile up. */
  end(): void;
}

/** Tells the page how far a job is: never backwards, and not more often than can be seen. */
export function createProgressTeller(onProgress: OnProgress): ProgressTeller {
  const remote = onProgress as OnProgress & Partial<Comlink.ProxyMethods>;
  let told = -1;
  let toldAt = Number.NEGATIVE_INFINITY;
  let stageTold: ProgressPhase | undefined;
  return {
    tell(part, stage) {
      const now = performance.now();
      if (part < 1 && stage === stageTold && now - toldAt < restMs) return;
      told = Math.max(told, Math.min(1, part));
      toldAt = now;
      stageTold = stage;
      // A page that has gone hears nothing, and that is no failure of the job.
      Promise.resolve(onProgress(told, stage)).catch(() => {});
    },
    end() {
      remote[Comlink.releaseProxy]?.();
    },
  };
}

interface HandOver {
  over(pictures: Pictures): void;
  /** Settles once the page has them. */
  received(): Promise<void>;
  /** Closes the way to the page; without it ports pile up. */
  end(): void;
}

/** Gives pictures to the page in mid-job; they are no longer the worker's. */
export function createHandOver(onPictures: OnPictures): HandOver {
  const remote = onPictures as OnPictures & Partial<Comlink.ProxyMethods>;
  let on: Promise<void> = Promise.resolve();
  return {
    over(pictures) {
      const sent = onPictures(Comlink.transfer(pictures, [pictures.reference, pictures.grey]));
      // What goes wrong on the page is no failure of the job.
      on = Promise.resolve(sent).catch(() => {});
    },
    received: () => on,
    end() {
      remote[Comlink.releaseProxy]?.();
    },
  };
}
