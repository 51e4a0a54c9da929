// A 12-megapixel photo of a sheet compared through the page's own door to the product's worker.
import { createAnalysisClient } from '../../app/client/analysis-client.ts';
import type { Step } from '../../app/core/plan/plan.ts';
import type { SheetRequest } from '../../workers/api.ts';
import { closePictures, readRequest } from '../browser/support/read-request.ts';
import { sheetPhoto } from '../browser/support/sheet-photo.ts';
import { anyScene } from '../support/compare/scene.ts';

const { signal } = new AbortController();
let client = createAnalysisClient();
let request: SheetRequest | null = null;

/** A photo read and planned, its sheet photographed at 4000 px; px of that photo. */
export async function preparePhoto(url: string): Promise<string> {
  const photo = await (await fetch(url)).blob();
  const { width, height, preview } = await client.openPhoto(signal, photo);
  preview.close();
  const asked = readRequest(photo, width, height, {}, 1600);
  const { reading, slotMap, lightnessMap } = await client.read(
    signal,
    asked,
    closePictures,
    () => {},
  );
  const plan = await client.plan(signal, reading, { paletteSize: 5 }, () => {});
  const step = plan.steps.at(-1) as Step;
  const scene = anyScene(1, 1600);
  const sheet = await sheetPhoto({ reading, slotMap, plan }, step, scene, {}, 4000);
  const own = { photo: sheet, reading, slotMap, lightnessMap, plan, step: step.n };
  request = { ...own, wetness: 'dry', bare: [] };
  const taken = await createImageBitmap(sheet);
  const size = `${taken.width} x ${taken.height}`;
  taken.close();
  return size;
}

/** The next call meets a fresh worker that has loaded its code and done nothing. */
export async function freshWorker(): Promise<void> {
  client.dispose();
  client = createAnalysisClient();
  await client.pigmentTable(signal);
}

function askedFor(): SheetRequest {
  if (!request) throw new Error('no photo prepared');
  return request;
}

/** From the photo to the verdict, ms; the longest time between two parts told, and the verdict. */
export async function compareOnce() {
  const since = performance.now();
  let [last, longest] = [since, 0];
  const { comparison, photo } = await client.compare(signal, askedFor(), () => {
    const now = performance.now();
    longest = Math.max(longest, now - last);
    last = now;
  });
  photo.close();
  return { took: performance.now() - since, longest, refused: comparison.refused };
}

/** Called off at a part of the job: ms until who asked is free, and until the worker has answered something else. */
export async function cancelAt(part: number) {
  const leaving = new AbortController();
  let since = 0;
  const gone = client.compare(leaving.signal, askedFor(), (done) => {
    if (done < part || since > 0) return;
    since = performance.now();
    leaving.abort();
  });
  await gone.then(
    ({ photo }) => photo.close(),
    () => {},
  );
  if (since === 0) throw new Error(`the comparison told nothing from ${part} on`);
  const caller = performance.now() - since;
  await client.pigmentTable(signal);
  return { caller, worker: performance.now() - since };
}
