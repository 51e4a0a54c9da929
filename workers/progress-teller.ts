import * as Comlink from 'comlink';
import type { OnProgress, Stage } from './analysis-api.ts';

/** At most one message in this time, ms: more is not seen and only costs. */
const restMs = 40;

export interface ProgressTeller {
  tell(part: number, stage: Stage): void;
  /** Closes the way to the page; without it ports pile up. */
  end(): void;
}

/** Tells the page how far a job is: never backwards, and not more often than can be seen. */
export function progressTeller(onProgress: OnProgress): ProgressTeller {
  const remote = onProgress as OnProgress & Partial<Comlink.ProxyMethods>;
  let told = -1;
  let toldAt = Number.NEGATIVE_INFINITY;
  let stageTold: Stage | undefined;
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
