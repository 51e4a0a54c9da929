import 'fake-indexeddb/auto';
import { openStore, type Store, type StoreOptions } from '../../../app/storage/open-store.ts';
import type { Pictures } from '../../../workers/api.ts';

let made = 0;

type MadeOptions = Pick<StoreOptions, 'readTimeMs' | 'retryMs'>;

/** A store of its own. */
export const madeStore = (options: MadeOptions = {}): Promise<Store> =>
  openStore({ name: `state ${made++}`, ...options });

/** A picture that tells how often it was given back. */
export interface MadeBitmap extends ImageBitmap {
  readonly closed: number;
}

function madeBitmap(): MadeBitmap {
  let closed = 0;
  return {
    width: 4,
    height: 3,
    get closed() {
      return closed;
    },
    close() {
      closed++;
    },
  };
}

export interface MadePictures extends Pictures {
  readonly reference: MadeBitmap;
  readonly grey: MadeBitmap;
}

export const madePictures = (): MadePictures => ({ reference: madeBitmap(), grey: madeBitmap() });

/** A fault as the worker hands it over. */
export const faultOf = (name: string, sentence: string): Error =>
  Object.assign(new Error(sentence), { name });
