import * as Comlink from 'comlink';
import type { AnalysisApi } from '../../workers/analysis-api.ts';

/** One living worker and the door to it. */
export interface WorkerHost {
  readonly api: Comlink.Remote<AnalysisApi>;
  end(): void;
}

export interface WorkerSigns {
  /** Anything at all came from the worker. */
  readonly alive: () => void;
  /** The worker could not be loaded, threw outside a call, or sent what can't be read. */
  readonly dead: (cause: unknown) => void;
}

export function startWorker(create: () => Worker, signs: WorkerSigns): WorkerHost {
  const worker = create();
  const dead = (event: Event): void => {
    event.preventDefault(); // it is told as a rejected call, not as an error of the page
    signs.dead(event);
  };
  worker.addEventListener('message', signs.alive);
  worker.addEventListener('error', dead);
  worker.addEventListener('messageerror', dead);
  return {
    api: Comlink.wrap<AnalysisApi>(worker),
    end() {
      worker.removeEventListener('message', signs.alive);
      worker.removeEventListener('error', dead);
      worker.removeEventListener('messageerror', dead);
      worker.terminate();
    },
  };
}
