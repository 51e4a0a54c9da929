import { findPatches } from '../app/core/paint/measure/find-patches.ts';
import { fitPaint } from '../app/core/paint/measure/fit-paint.ts';
import type { MeasuredPhoto, PatchFrame } from '../app/core/paint/measure/measured-photo.ts';
import type { PaintMeasure, PaintPatch } from '../app/core/paint/measure/paint-measure.ts';
import type { Paint } from '../app/core/paint/paint.ts';
import { knownPaints } from '../app/core/paint/paint-box.ts';
import { photoError } from './photo/decode-photo.ts';
import { readRaster } from './photo/read-raster.ts';

/** Patches are measured on the photo at this long side, px. */
const longSidePx = 1000;

/** A white, a cool and a warm colour and an earth: paints most boxes have, that a new one is thought mixed with. */
const triedIds = [
  'pw6-titanium-white',
  'pb29-ultramarine-blue',
  'py74-arylide-yellow',
  'pbr7-burnt-sienna',
];

/** A RangeError of a kernel carries a painter's sentence: only a name and a message survive the way to the page. */
function inWords<T>(work: () => T): T {
  try {
    return work();
  } catch (thrown) {
    throw thrown instanceof RangeError ? photoError(thrown.message, thrown) : thrown;
  }
}

/** The patches on a photo: those in her frames, or found where she set none. Errors: `PhotoError`. */
export async function measurePatches(
  photo: Blob,
  frames: readonly PatchFrame[] | null,
  pause: () => Promise<void>,
): Promise<MeasuredPhoto> {
  const whole = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;
  const { raster } = await readRaster(photo, whole, longSidePx, pause);
  await pause();
  return inWords(() => findPatches(raster, frames));
}

/** K and S of her paint from its patches; `own` are her other paints. Errors: `PhotoError`. */
export function fitMeasuredPaint(
  patches: readonly PaintPatch[],
  isWhite: boolean,
  own: readonly Paint[],
): PaintMeasure {
  const known = knownPaints(own);
  const named = new Set(patches.flatMap(({ is }) => (is.kind === 'half' ? [is.with] : [])));
  return inWords(() =>
    fitPaint(patches, {
      known: new Map(known.filter(({ id }) => named.has(id)).map((paint) => [paint.id, paint])),
      tried: known.filter(({ id }) => triedIds.includes(id)),
      isWhite,
    }),
  );
}
