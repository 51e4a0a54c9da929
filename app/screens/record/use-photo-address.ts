import { type ReadonlySignal, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Keepsakes } from '../../state/session/keepsakes.ts';

interface PhotoAddress {
  /** Null until it is read, and where there is none. */
  readonly address: ReadonlySignal<string | null>;
  /** It is no longer kept, or can't be read. */
  readonly gone: ReadonlySignal<boolean>;
}

/** The address of a kept photo for an img; let go of with what shows it. */
export function usePhotoAddress(
  keepsakes: Pick<Keepsakes, 'photo'>,
  photoId: string | null,
): PhotoAddress {
  const address = useSignal<string | null>(null);
  const gone = useSignal(false);
  useEffect(() => {
    let left = false;
    let made = '';
    address.value = null;
    gone.value = false;
    if (photoId === null) return;
    keepsakes.photo(photoId).then(
      (found) => {
        if (left) return;
        gone.value = found === null;
        if (!found) return;
        made = URL.createObjectURL(new Blob([found.bytes], { type: found.mime }));
        address.value = made;
      },
      () => {
        if (!left) gone.value = true;
      },
    );
    return () => {
      left = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [photoId, keepsakes, address, gone]);
  return { address, gone };
}
