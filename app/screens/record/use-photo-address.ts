import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Keepsakes } from '../../state/session/keepsakes.ts';

/** Where a kept photo can be seen as long as this is shown; `gone`: it is not there any more. */
export function usePhotoAddress(
  keepsakes: Pick<Keepsakes, 'photo'>,
  photoId: string,
): { readonly address: string | null; readonly gone: boolean } {
  const address = useSignal<string | null>(null);
  const gone = useSignal(false);
  useEffect(() => {
    let left = false;
    let made = '';
    keepsakes.photo(photoId).then(
      (found) => {
        if (left) return;
        gone.value = found === null;
        if (!found) return;
        made = URL.createObjectURL(new Blob([found.bytes], { type: found.mime }));
        address.value = made;
      },
      () => {
        gone.value = true;
      },
    );
    return () => {
      left = true;
      if (made) URL.revokeObjectURL(made);
    };
  }, [photoId, keepsakes, address, gone]);
  return { address: address.value, gone: gone.value };
}
