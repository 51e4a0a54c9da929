import { type ReadonlySignal, signal } from '@preact/signals';
import type { Pictures } from '../../../workers/api.ts';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import { describeFault } from '../describe-fault.ts';

/** What a look at her sheet asks of the worker. */
export type QuickLookCalls = Pick<AnalysisClient, 'openPhoto' | 'pictures'>;

/** A photo of her sheet as it stands, in colour and grey; kept nowhere. */
export interface QuickLook {
  readonly pictures: ReadonlySignal<Pictures | null>;
  /** The photo is being looked at. */
  readonly working: ReadonlySignal<boolean>;
  readonly problem: ReadonlySignal<string | null>;
  take(photo: Blob): Promise<void>;
  leave(): void;
}

/** A picture as the bytes of a JPEG. */
async function jpegOf(picture: ImageBitmap): Promise<ArrayBuffer> {
  const canvas = new OffscreenCanvas(picture.width, picture.height);
  canvas.getContext('2d')?.drawImage(picture, 0, 0);
  picture.close();
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.92 });
  return blob.arrayBuffer();
}

export function createQuickLook(calls: QuickLookCalls, encode = jpegOf): QuickLook {
  const pictures = signal<Pictures | null>(null);
  const working = signal(false);
  const problem = signal<string | null>(null);
  let looking = new AbortController();
  function clear(): void {
    looking.abort();
    pictures.value?.reference.close();
    pictures.value?.grey.close();
    pictures.value = null;
    problem.value = null;
    working.value = false;
  }
  return {
    pictures,
    working,
    problem,
    leave: clear,
    async take(photo) {
      clear();
      looking = new AbortController();
      const { signal: leaving } = looking;
      working.value = true;
      try {
        const { preview } = await calls.openPhoto(leaving, photo);
        const seen = await calls.pictures(leaving, await encode(preview));
        if (leaving.aborted) {
          seen.reference.close();
          seen.grey.close();
        } else pictures.value = seen;
      } catch (fault) {
        if (!leaving.aborted) problem.value = describeFault(fault);
      } finally {
        if (!leaving.aborted) working.value = false;
      }
    },
  };
}
