import * as Comlink from 'comlink';
import type { AnalysisApi } from '../../workers/api.ts';

/** Names of worker errors whose message may go to the screen, or that mean no error at all. */
const kept = ['PhotoError', 'CropError', 'BrowserError', 'WishError', 'AbortError'];

const sentence =
  'The picture could not be worked out. Nothing is lost: try again, or reload the page if it happens twice.';

/** The analysis stopped or broke; the message is a sentence for the painter. */
class AnalysisError extends Error {
  override readonly name = 'AnalysisError';

  constructor(cause?: unknown) {
    super(sentence, { cause });
  }
}

/** What a caller gets for whatever a worker threw: a named error as it is, anything else in words. */
function readableError(thrown: unknown): Error {
  if (thrown instanceof Error && kept.includes(thrown.name)) return thrown;
  return new AnalysisError(thrown);
}

/** One living worker and the door to it. */
interface WorkerHost {
  readonly api: Comlink.Remote<AnalysisApi>;
  end(): void;
}

interface WorkerSigns {
  /** Anything at all came from the worker. */
  readonly alive: () => void;
  /** The worker could not be loaded, threw outside a call, or sent what can't be read. */
  readonly dead: (cause: unknown) => void;
}

function startWorker(create: () => Worker, signs: WorkerSigns): WorkerHost {
  const worker = create();
  const dead = (event: Event): void => {
    event.preventDefault(); // it is told as a rejected call, not as an error of the page
    signs.dead(event);
  };
  worker.addEventListener('message', signs.alive);
  worker.addEventListener('error', dead);
  worker.addEventListener('messageerror', dead);
  const api = Comlink.wrap<AnalysisApi>(worker);
  return {
    api,
    end() {
      worker.removeEventListener('message', signs.alive);
      worker.removeEventListener('error', dead);
      worker.removeEventListener('messageerror', dead);
      worker.terminate();
      // Comlink 4.4 keeps calls without an answer for ever, and with them the screens that asked.
      api[Comlink.releaseProxy]();
    },
  };
}

export interface DeskOptions {
  readonly createWorker: () => Worker;
  /** How long a worker may take to answer a cancel before it is ended, ms. */
  readonly cancelMs: number;
  /** How long it may say nothing at all while a call is open, ms. */
  readonly silenceMs: number;
}

type Invoke<T> = (api: Comlink.Remote<AnalysisApi>, job: number) => Promise<T>;

interface OpenCall {
  send(): void;
  fail(error: unknown): void;
}

interface CallDesk {
  call<T>(signal: AbortSignal, invoke: Invoke<T>, discard?: (late: T) => void): Promise<T>;
  isOpen(job: number): boolean;
  dispose(): void;
}

/** The watch ticks this often in the time of silence allowed: a laptop's sleep counts as one tick. */
const ticksOfSilence = 6;

/**
 * Calls to a worker that may hang, die or be ended. Every promise settles: an aborted caller is
 * freed at once; a worker that does not answer the cancel is ended and the other open calls are
 * sent again to a fresh one; a dead or silent worker fails its calls in words.
 */
export function createCallDesk(options: DeskOptions): CallDesk {
  const open = new Map<number, OpenCall>();
  let host: WorkerHost | null = null;
  let lastJob = 0;
  let quiet = 0;
  let watch: ReturnType<typeof setInterval> | undefined;

  const endHost = (): void => {
    host?.end();
    host = null;
  };

  const failAll = (cause: unknown): void => {
    endHost();
    for (const call of [...open.values()]) call.fail(new AnalysisError(cause));
  };

  const ensureHost = (): WorkerHost => {
    host ??= startWorker(options.createWorker, {
      alive: () => {
        quiet = 0;
      },
      dead: failAll,
    });
    return host;
  };

  const keepWatch = (): void => {
    if (open.size === 0) {
      clearInterval(watch);
      watch = undefined;
    } else {
      watch ??= setInterval(() => {
        quiet += 1;
        if (quiet > ticksOfSilence) failAll(new Error('the worker fell silent'));
      }, options.silenceMs / ticksOfSilence);
    }
  };

  const cancel = (job: number): void => {
    const asked = host;
    if (!asked) return;
    const timer = setTimeout(() => {
      if (host !== asked) return;
      endHost();
      quiet = 0;
      for (const call of [...open.values()]) call.send();
    }, options.cancelMs);
    const answered = (): void => clearTimeout(timer);
    asked.api.cancel(job).then(answered, answered);
  };

  function call<T>(
    signal: AbortSignal,
    invoke: Invoke<T>,
    discard: (late: T) => void = () => {},
  ): Promise<T> {
    if (signal.aborted) return Promise.reject(signal.reason);
    lastJob += 1;
    const job = lastJob;
    return new Promise<T>((resolve, reject) => {
      const close = (): void => {
        signal.removeEventListener('abort', aborted);
        open.delete(job);
        keepWatch();
      };
      const fail = (error: unknown): void => {
        close();
        reject(error);
      };
      const aborted = (): void => {
        fail(signal.reason);
        cancel(job);
      };
      const post = (to: WorkerHost): void => {
        const mine = (): boolean => host === to && open.has(job);
        invoke(to.api, job).then(
          (result) => {
            if (!mine()) return discard(result);
            close();
            resolve(result);
          },
          (thrown) => {
            if (mine()) fail(readableError(thrown));
          },
        );
      };
      const send = (): void => {
        try {
          post(ensureHost());
        } catch (thrown) {
          fail(readableError(thrown)); // the browser refuses the worker, or a request can't be sent
        }
      };
      if (open.size === 0) quiet = 0;
      open.set(job, { send, fail });
      signal.addEventListener('abort', aborted, { once: true });
      keepWatch();
      send();
    });
  }

  return {
    call,
    isOpen: (job) => open.has(job),
    dispose() {
      endHost();
      const gone = new DOMException('The analysis was put away.', 'AbortError');
      for (const each of [...open.values()]) each.fail(gone);
    },
  };
}
