import { useEffect, useState } from 'preact/hooks';
import type { Edge } from '../../model/edge.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import type { SoftBlend } from '../../model/soft-blend.ts';
import type { PictureCalls } from '../../state/picture-calls.ts';

/** A picture whose edges are to be drawn soft; the same object as long as nothing of it changes. */
export interface SoftPicture {
  readonly slotMap: Uint8Array;
  readonly size: PixelSize;
  readonly edges: readonly Edge[];
}

/**
 * How colours run together at the soft edges of a picture; null until it is worked out, or where it can't be.
 * While its edges are worked out anew the ones before are shown.
 */
export function useSoft(calls: PictureCalls, picture: SoftPicture | null): SoftBlend | null {
  const [found, setFound] = useState<{ of: SoftPicture; blend: SoftBlend } | null>(null);
  useEffect(() => {
    if (!picture) return;
    const leaving = new AbortController();
    const { slotMap, size, edges } = picture;
    calls.softBlend(leaving.signal, slotMap, size, edges).then(
      (blend) => setFound({ of: picture, blend }),
      () => undefined, // the sheet is shown with crisp edges
    );
    return () => leaving.abort();
  }, [calls, picture]);
  return found && found.of.slotMap === picture?.slotMap ? found.blend : null;
}
