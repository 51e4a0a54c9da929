import type { OnPictures, OnProgress, Pictures } from '../../../workers/api.ts';
import type { AnalysisClient } from '../../client/analysis-client.ts';
import type { CrashGuard } from '../../client/crash-guard.ts';
import type { Painting } from '../../core/decisions/painting.ts';
import type { PlanWishes } from '../../core/decisions/plan-wishes.ts';
import { standingDecisions } from '../../core/decisions/standing-decisions.ts';
import {
  boxWishes,
  paletteWish,
  planDecisionKinds,
  planWishes,
  readingWishes,
} from '../../core/decisions/wishes.ts';
import { type KeptAir, usualAir } from '../../core/drying/conditions.ts';
import type { OwnBox } from '../../core/paint/own-box.ts';
import { planEngine, type WashPlan } from '../../core/plan/plan.ts';
import { readingEngine } from '../../core/reading/reading.ts';
import { fitSheet } from '../../core/reference/reference.ts';
import type { Store } from '../../storage/open-store.ts';
import { StorageProblem } from '../../storage/storage-problem.ts';
import { keptReadingOf, type OpenedReading } from './opened-reading.ts';
import type { PaintingKeeper } from './painting-keeper.ts';

/** All that a reading depends on: the same key, the same reading. */
export function readingKeyOf({ reference, decisions }: Painting): string {
  return JSON.stringify([readingEngine, reference, readingWishes(decisions, reference)]);
}

/** All that a plan depends on. */
export function planKeyOf(painting: Painting, box: OwnBox, air: KeptAir = usualAir): string {
  const { decisions } = painting;
  const over = standingDecisions(decisions, ...planDecisionKinds);
  return JSON.stringify([
    planEngine,
    readingKeyOf(painting),
    planWishes(decisions, box, air),
    over.map(({ id: _id, at: _at, ...what }) => what),
  ]);
}

/** What she asks of the paints; a strength her scrap corrected is no reason for others. */
export const paintsKeyOf = ({ decisions }: Painting, box: OwnBox): string =>
  JSON.stringify([paletteWish(decisions), { ...boxWishes(box), strengths: [] }]);

/** Her wishes for the plan, and the palette the painting has by `plan`: it stays where no other is clearly better. */
export function wishesWithPalette(
  { decisions }: Painting,
  box: OwnBox,
  plan: WashPlan | null,
  air?: KeptAir,
): PlanWishes {
  const present = plan?.palette.map(({ id }) => id);
  return { ...planWishes(decisions, box, air), ...(present && { present }) };
}

export interface ReadingNeeds {
  readonly store: Store;
  readonly client: AnalysisClient;
  readonly guard: CrashGuard;
}

/** The photo's bytes as they were kept. */
export async function loadKeptPhoto(store: Store, { reference }: Painting): Promise<Blob> {
  const photo = await store.photo(reference.photoId);
  if (!photo) throw new StorageProblem('photo-gone');
  return new Blob([photo.bytes], { type: photo.mime });
}

/** The sheet and the part of the photo put right by the photo's size as it is decoded. */
export async function refitReference(
  signal: AbortSignal,
  painting: Painting,
  { store, client }: Pick<ReadingNeeds, 'store' | 'client'>,
): Promise<Painting['reference']> {
  const { photoId, sheet } = painting.reference;
  const size = await client.photoSize(signal, await loadKeptPhoto(store, painting));
  return { photoId, ...fitSheet(size, sheet) };
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
): Promise<OpenedReading> {
  const kept = await store.keptReading(painting.id, readingKeyOf(painting));
  if (kept) {
    const pictures = await client.pictures(signal, kept.referenceJpeg);
    guard.shown(painting.reference.photoId);
    onPictures(pictures);
    return { ...kept, ...pictures };
  }
  const { photoId, crop, sheet } = painting.reference;
  const photo = await loadKeptPhoto(store, painting);
  const longSidePx = guard.sizeFor(photoId);
  const wishes = readingWishes(painting.decisions, painting.reference);
  guard.begin({ photoId, longSidePx });
  let well = false;
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
    well = true;
    await store.keepThumbnail(painting.id, result.thumbnail);
    const [pictures] = early;
    if (!pictures) throw new Error('A reading came without its pictures');
    return { ...result, ...pictures };
  } finally {
    guard.end(well);
  }
}

interface PlanNeeds {
  readonly store: Pick<Store, 'keptPlan' | 'keepPlan' | 'planById'>;
  readonly client: Pick<AnalysisClient, 'plan'>;
  readonly keeper: Pick<PaintingKeeper, 'change' | 'adopt'>;
}

interface PlanAsked {
  readonly painting: Painting;
  readonly opened: OpenedReading;
  /** What reading and plan are made from. */
  readonly readingKey: string;
  readonly key: string;
  readonly wishes: PlanWishes;
}

/** The plan it was handed on with, as long as nothing was decided since: whose paints it takes is asked first. */
const planAsHandedOn = (
  { handedOn, decisions }: Painting,
  { planById }: Pick<Store, 'planById'>,
): Promise<WashPlan | null> | null =>
  handedOn && handedOn.decisions === decisions.length ? planById(handedOn.planId) : null;

/** The plan of these very decisions: kept from before, or worked out now and kept. */
export async function planPainting(
  signal: AbortSignal,
  { painting, opened, readingKey, key, wishes }: PlanAsked,
  { store, client, keeper }: PlanNeeds,
  onProgress: OnProgress,
): Promise<WashPlan> {
  const kept = (await store.keptPlan(painting.id, key)) ?? (await planAsHandedOn(painting, store));
  if (kept) {
    const toTheEnd = (ids: readonly string[]) => [...ids.filter((id) => id !== kept.id), kept.id];
    if (painting.planIds.at(-1) !== kept.id)
      await keeper.change((before) => ({ ...before, planIds: toTheEnd(before.planIds) }));
    return kept;
  }
  const { decidedReading } = await import('../../core/decisions/decided-reading.ts');
  const seenNow = decidedReading(opened.reading, painting);
  const plan = await client.plan(signal, seenNow, wishes, onProgress);
  signal.throwIfAborted();
  const made = { plan, key, readingKey, kept: keptReadingOf(opened) };
  keeper.adopt(await store.keepPlan(painting.id, made));
  return plan;
}
