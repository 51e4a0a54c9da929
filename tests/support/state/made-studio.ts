import { signal } from '@preact/signals';
import { vi } from 'vitest';
import type { AnalysisClient } from '../../../app/client/analysis-client.ts';
import type { CrashGuard } from '../../../app/client/crash-guard.ts';
import type { Painting } from '../../../app/core/decisions/painting.ts';
import { usualAir } from '../../../app/core/drying/conditions.ts';
import { emptyBox } from '../../../app/core/paint/own-box.ts';
import { createStudio } from '../../../app/state/painting/studio.ts';
import type { Store } from '../../../app/storage/open-store.ts';
import { newPlanSample, paintingSample, photoSample, planSample } from '../storage/kept-samples.ts';
import { type MadePictures, madePictures, madeStore } from './made-store.ts';

export const { kept } = newPlanSample('any');

/** A studio over a real store; the worker answers by hand, the crash guard remembers what it was told. */
export function studioOver(store: Store, changed: { readonly waits?: boolean } = {}) {
  const handed: MadePictures[] = [];
  const hand = () => {
    const pictures = madePictures();
    handed.push(pictures);
    return pictures;
  };
  let plans = 0;
  const client = {
    read: vi.fn<AnalysisClient['read']>(async (_signal, _request, onPictures, onProgress) => {
      onPictures(hand());
      onProgress(0.5, 'values');
      return {
        ...kept,
        bandMap: new Uint8Array(1200),
        lightnessMap: kept.lightnessMap as Uint8Array,
        thumbnail: new Uint8Array([7, 8]).buffer,
      };
    }),
    plan: vi.fn<AnalysisClient['plan']>(async () => planSample(`plan ${++plans}`)),
    pictures: vi.fn<AnalysisClient['pictures']>(async () => hand()),
    subjectLine: vi.fn<AnalysisClient['subjectLine']>(async () => null),
    washShapes: vi.fn<AnalysisClient['washShapes']>(async () => ({
      map: new Uint8Array(0),
      isPainted: [],
      count: 3,
    })),
    photoSize: vi.fn<AnalysisClient['photoSize']>(async () => ({ width: 30, height: 40 })),
    openPhoto: vi.fn<AnalysisClient['openPhoto']>(async () => ({
      width: 40,
      height: 30,
      preview: madePictures().grey,
    })),
  };
  const told: string[] = [];
  const guard: CrashGuard = {
    left: null,
    ready: Promise.resolve(),
    shown: () => {},
    waits: () => changed.waits ?? false,
    sizeFor: (id) => (id === 'small' ? 800 : 1600),
    begin: ({ photoId, longSidePx }) => told.push(`${photoId} at ${longSidePx}`),
    end: () => told.push('ended'),
  };
  const bad: [Painting, string][] = [];
  const studio = createStudio({
    store,
    client: client as unknown as AnalysisClient,
    guard,
    ownBox: { box: signal(emptyBox), ready: Promise.resolve() },
    ownAir: { air: signal(usualAir), ready: Promise.resolve() },
    onBadPhoto: (painting, sentence) => bad.push([painting, sentence]),
  });
  return { studio, client, handed, told, bad };
}

export async function storeWith(...paintings: Painting[]): Promise<Store> {
  const store = await madeStore();
  for (const painting of paintings)
    await store.addPainting(painting, photoSample(painting.reference.photoId));
  return store;
}

export const meadow = paintingSample('meadow', 'photo');
export const hour = { kind: 'evening', minutes: 60 } as const;
