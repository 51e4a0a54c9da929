import * as Comlink from 'comlink';
import type { OnPictures, Pictures } from './analysis-api.ts';

export interface HandOver {
  over(pictures: Pictures): void;
  /** Settles once the page has them. */
  received(): Promise<void>;
  /** Closes the way to the page; without it ports pile up. */
  end(): void;
}

/** Gives pictures to the page in mid-job; they are no longer the worker's. */
export function handOver(onPictures: OnPictures): HandOver {
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
