// What the page's worker does, timed where it runs: the first call in a fresh worker, and warm.

import type { PlanWishes } from '../../app/core/decisions/plan-wishes.ts';
import { isWhiteOrBlack } from '../../app/core/paint/paint.ts';
import { paintBox } from '../../app/core/paint/paint-box.ts';
import { LibraryMemo } from '../../app/core/palette/library/mix-library.ts';
import { openSearch } from '../../app/core/palette/search/search-palette.ts';
import { buildPlan } from '../../app/core/plan/build-plan.ts';
import { createPlanMemory } from '../../app/core/plan/plan-memory.ts';
import { lightnessPlane } from '../../app/core/raster/linear-raster.ts';
import type { Reading } from '../../app/core/reading/reading.ts';
import { warmReading } from '../../workers/read-reference.ts';
import forest from '../fixtures/readings/forest-stream.json';
import snow from '../fixtures/readings/mountain-snow.json';
import seeds from '../fixtures/readings/seed-heads.json';
import type { PhotoBytes } from './bench.ts';
import { noPause, rasterOf, readBytes } from './read-bytes.ts';
import { type StageTimes, stageTimes } from './stage-times.ts';

interface PhotoTask {
  readonly work: 'raster and lightness' | 'reading' | 'reading after warming up';
  readonly photo: PhotoBytes;
  readonly rounds: number;
}

interface StagesTask {
  readonly work: 'stages';
  readonly photo: PhotoBytes;
  readonly rounds: number;
}

export type WorkerTask =
  | PhotoTask
  | StagesTask
  | { readonly work: 'palette search' | 'plans'; readonly rounds: number };

async function msOf(work: () => unknown): Promise<number> {
  const since = performance.now();
  await work();
  return performance.now() - since;
}

/** ms, every round. */
async function photoTimes({ photo, work, rounds }: PhotoTask): Promise<number[]> {
  if (work === 'reading after warming up') await warmReading(noPause);
  const times: number[] = [];
  const once = (): unknown =>
    work === 'raster and lightness' ? lightnessPlane(rasterOf(photo).raster) : readBytes(photo, {});
  for (let round = 0; round < rounds; round++) times.push(await msOf(once));
  return times;
}

/** ms by stage, every round. */
async function photoStages({ photo, rounds }: StagesTask) {
  const times: StageTimes[] = [];
  const clock = () => performance.now();
  for (let round = 0; round < rounds; round++) times.push(await stageTimes(photo, { clock }));
  return times;
}

/** The first search in a fresh worker and, with its mixes kept, the warm ones, ms; the bytes of its tables. */
async function searchTimes(rounds: number) {
  // Whites and blacks are let in as if they were any paint, so that all are searched.
  const all = paintBox.map((paint) =>
    isWhiteOrBlack(paint.ci) ? { ...paint, ci: ['any'] } : paint,
  );
  const { slots } = seeds as unknown as Reading;
  const library = new LibraryMemo();
  const search = () => openSearch(slots, all, { paletteSize: 5 }, noPause, library);
  const cold = await msOf(search);
  const warm: number[] = [];
  for (let round = 0; round < rounds; round++) warm.push(await msOf(search));
  const { tables, targets, ties, paints } = await search();
  const { groups } = await library.libraryOf(paints, noPause);
  const libraryBytes = groups.reduce(
    (sum, { lightness, chroma }) => sum + lightness.byteLength + chroma.byteLength,
    0,
  );
  const tableBytes = tables.costs.byteLength + tables.darkest.byteLength;
  const found = { paints: paints.length, targets: targets.length, cost: ties[0]?.cost };
  return { ...found, cold, warm, libraryBytes, tableBytes };
}

/**
 * Plans from three readings, ms: the paints searched as well (of the first picture in a fresh worker); every
 * round with the paints chosen and no washes remembered, and with a step left out of the plan before or put back.
 */
async function planTimes(rounds: number) {
  const all = [];
  const memory = createPlanMemory();
  const { library, darkest, dryingModel } = memory;
  for (const [name, kept] of Object.entries({
    'seed heads': seeds,
    'mountain snow': snow,
    'forest stream': forest,
  })) {
    const reading = kept as unknown as Reading;
    const planned = (wishes: PlanWishes, from = memory) =>
      buildPlan(reading, wishes, noPause, from);
    const searched = await msOf(() => planned({}));
    const { palette, mixes } = await planned({});
    const paints = palette.map(({ id }) => id);
    const chosen: number[] = [];
    const changed: number[] = [];
    for (let round = 0; round < rounds; round++) {
      const unsolved = { ...createPlanMemory(), library, darkest, dryingModel };
      chosen.push(await msOf(() => planned({ chosen: paints }, unsolved)));
      const edit = { kind: 'skip', key: 'accents/sheet/0', skipped: round % 2 === 0 } as const;
      changed.push(await msOf(() => planned({ edits: [edit] })));
    }
    const mixCount = mixes.filter(({ parts }) => parts.length > 0).length;
    all.push({ name, mixCount, searched, chosen, changed });
  }
  return all;
}

/** What is asked of the worker; a page may ask it itself, where its thread is slowed down. */
export function answerTo(task: WorkerTask): Promise<unknown> {
  switch (task.work) {
    case 'palette search':
      return searchTimes(task.rounds);
    case 'plans':
      return planTimes(task.rounds);
    case 'stages':
      return photoStages(task);
    default:
      return photoTimes(task);
  }
}

self.onmessage = async ({ data }: MessageEvent<WorkerTask>) => {
  self.postMessage(await answerTo(data));
};
