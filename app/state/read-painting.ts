import type { OnPictures, OnProgress, Pictures } from '../../workers/analysis-api.ts';
import type { AnalysisClient } from '../analysis/analysis-client.ts';
import type { CrashGuard } from '../analysis/crash-guard.ts';
import type { Painting } from '../model/painting.ts';
import { readingWishes } from '../model/wishes.ts';
import type { Store } from '../storage/open-store.ts';
import { StorageProblem } from '../storage/storage-problem.ts';
import { readingKeyOf } from './keys.ts';
import type { Seen } from './seen.ts';

export interface ReadingNeeds {
  readonly store: Store;
  readonly client: AnalysisClient;
  readonly guard: CrashGuard;
}

/** The photo's bytes as they were kept. */
export async function photoOf(store: Store, { reference }: Painting): Promise<Blob> {
  const photo = await store.photo(reference.photoId);
  if (!photo) throw new StorageProblem('missing');
  return new Blob([photo.bytes], { type: photo.mime });
}

/**
 * What is seen in a painting's reference by her decisions: kept from before, or read now. Its
 * pictures are told early; they are the caller's to close, also when the rest fails.
 */
export async function readPainting(
  signal: AbortSignal,
  painting: Painting,
  { store, client, guard }: ReadingNeeds,
  onPictures: OnPictures,
  onProgress: OnProgress,
): Promise<Seen> {
  const kept = await store.keptReading(painting.id, readingKeyOf(painting));
  if (kept) {
    const pictures = await client.pictures(signal, kept.referenceJpeg);
    onPictures(pictures);
    return { ...kept, ...pictures };
  }
  const { photoId, crop, sheet } = painting.reference;
  const photo = await photoOf(store, painting);
  const longSidePx = guard.sizeFor(photoId);
  const wishes = readingWishes(painting.decisions, painting.reference);
  guard.begin({ photoId, longSidePx });
  try {
    const early: Pictures[] = [];
    const result = await client.read(
      signal,
      { photo, crop, sheet, wishes, longSidePx },
      (pictures) => {
        early.push(pictures);
        onPictures(pictures);
      },
      onProgress,
    );
    await store.keepThumbnail(painting.id, result.thumbnail);
    const [pictures] = early;
    if (!pictures) throw new Error('A reading came without its pictures');
    return { ...result, ...pictures };
  } finally {
    guard.end();
  }
}
