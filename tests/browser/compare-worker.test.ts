import { afterAll, expect, test } from 'vitest';
import { createAnalysisClient } from '../../app/client/analysis-client.ts';
import type { Step, WashPlan } from '../../app/core/plan/plan.ts';
import type { ProgressPhase } from '../../app/core/reading/reading.ts';
import type { ReadResult, SheetRequest } from '../../workers/api.ts';
import { bandChanged, type KnownChange, nothingChanged } from '../support/compare/changed.ts';
import { anyScene } from '../support/compare/scene.ts';
import { closePictures, readRequest } from './support/read-request.ts';
import { sheetPhoto } from './support/sheet-photo.ts';

// Sheets drawn and photographed by the tests' own means; limits are those of the task (own).
const client = createAnalysisClient();
afterAll(() => client.dispose());
const { signal } = new AbortController();
const snow = new URL('../fixtures/mountain-snow.jpg', import.meta.url);
const chosen = [
  'py43-yellow-ochre',
  'pb29-ultramarine-blue',
  'pbr7-burnt-sienna',
  'pg7-phthalocyanine-green',
];

interface Planned extends ReadResult {
  readonly plan: WashPlan;
}

async function readAndPlan(): Promise<Planned> {
  const photo = await (await fetch(snow)).blob();
  const { width, height, preview } = await client.openPhoto(signal, photo);
  preview.close();
  const request = readRequest(photo, width, height, {}, 800);
  const read = await client.read(signal, request, closePictures, () => {});
  const plan = await client.plan(signal, read.reading, { chosen }, () => {});
  return { ...read, plan };
}

const planned = readAndPlan();
const scene = anyScene(1, 800);

async function ask(
  change: (planned: Planned, step: Step) => KnownChange,
  longSidePx?: number,
): Promise<SheetRequest> {
  const { reading, slotMap, plan, lightnessMap } = await planned;
  const step = plan.steps.at(-1) as Step;
  const { drawing } = change(await planned, step);
  const photo = await sheetPhoto({ reading, slotMap, plan }, step, scene, drawing, longSidePx);
  return {
    photo,
    ...{ reading, slotMap, lightnessMap, plan, step: step.n, wetness: 'dry', bare: [] },
  };
}

const asPlanned = ask(() => nothingChanged);

test('a 12-megapixel photo of a sheet as planned is judged so, with the pictures to look at', async () => {
  const request = await ask(() => nothingChanged, 4000);
  const parts: number[] = [];
  const stages = new Set<ProgressPhase>();
  const begun = performance.now();
  const { comparison, photo, pictures } = await client.compare(signal, request, (part, stage) => {
    parts.push(part);
    stages.add(stage);
  });
  const took = performance.now() - begun;
  console.log(`photo to verdict, 12 megapixels: ${took.toFixed(0)} ms`);
  expect(comparison.refused === null && comparison.whole.within4).toBeGreaterThan(0.95);
  expect(Math.max(photo.width, photo.height)).toBe(1600);
  const count = pictures ? pictures.size.width * pictures.size.height : 0;
  expect(pictures?.expected).toHaveLength(4 * count);
  expect(pictures?.measured.lightness).toHaveLength(count);
  expect(pictures?.shapes).toHaveLength(count);
  expect(parts).toEqual([...parts].sort((one, two) => one - two));
  expect(parts.length).toBeGreaterThan(3);
  // It is opened, then its sheet is found, then values are compared.
  expect([...stages]).toEqual(['opening', 'shapes', 'values']);
  photo.close();
});

test('a band that came out too dark is told first', async () => {
  const request = await ask(
    ({ plan }, step) =>
      bandChanged(plan, step, 2, -9) ?? bandChanged(plan, step, 3, -9) ?? nothingChanged,
  );
  const { comparison, photo } = await client.compare(signal, request, () => {});
  photo.close();
  expect(comparison.refused).toBeNull();
  expect(comparison.refused === null && (comparison.advice[0]?.difference ?? 0)).toBeLessThan(-4);
});

test('a comparison called off frees who asked at once, and the worker answers the next call', async () => {
  const request = await asPlanned;
  const leaving = new AbortController();
  const gone = client.compare(leaving.signal, request, (part) => {
    if (part > 0.35) leaving.abort();
  });
  await expect(gone).rejects.toMatchObject({ name: 'AbortError' });
  const { comparison, photo } = await client.compare(signal, request, () => {});
  photo.close();
  expect(comparison.refused).toBeNull();
});

test('what is no photo is refused in words', async () => {
  const request = { ...(await asPlanned), photo: new Blob(['no photo']) };
  await expect(client.compare(signal, request, () => {})).rejects.toMatchObject({
    name: 'PhotoError',
  });
});
