import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { createAnalysisClient } from '../../app/client/analysis-client.ts';
import { runs } from '../support/more-runs.ts';
import { clearSentence, photosToSpoil, spoiltPhoto } from '../support/reference/spoilt-photo.ts';
import { casePhoto } from './support/case-photo.ts';
import { closePictures, readRequest } from './support/read-request.ts';

const client = createAnalysisClient();
afterAll(() => client.dispose());
const signal = new AbortController().signal;
const seed = 20_261_130;

async function read(photo: Blob): Promise<number> {
  const { width, height, preview } = await client.openPhoto(signal, photo);
  preview.close();
  const request = readRequest(photo, width, height, {}, 400);
  const { reading } = await client.read(signal, request, closePictures, () => {});
  return reading.bands.reduce((sum, { share }) => sum + share, 0);
}

// RUNS=100 before the command makes it 500; what comes out is printed.
test('a photo spoilt in any way is read by the app, or refused in a sentence, and the app goes on', async () => {
  const whole = new Map<string, Uint8Array>();
  for (const name of photosToSpoil)
    whole.set(name, new Uint8Array(await (await casePhoto(name)).arrayBuffer()));
  let [done, refused] = [0, 0];
  const oneOfThem = fc.record({ each: fc.integer(), name: fc.constantFrom(...photosToSpoil) });
  await fc.assert(
    fc.asyncProperty(oneOfThem, async ({ each, name }) => {
      const photo = new Blob([spoiltPhoto(each, whole.get(name) ?? new Uint8Array())]);
      let share = 1;
      try {
        share = await read(photo);
        done++;
      } catch (fault) {
        expect(fault).toMatchObject({
          name: 'PhotoError',
          message: expect.stringMatching(clearSentence),
        });
        refused++;
      }
      expect(Math.abs(share - 1)).toBeLessThan(1e-6);
    }),
    { ...runs(5, seed), seed },
  );
  expect(await read(await casePhoto('exif-orient-1.jpg'))).toBeCloseTo(1, 6);
  console.log(`spoilt photos, the app: ${done} read, ${refused} refused`);
  expect(refused).toBeGreaterThan(0);
});
