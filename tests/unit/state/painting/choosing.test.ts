import { expect, test, vi } from 'vitest';
import type { AnalysisClient } from '../../../../app/client/analysis-client.ts';
import type { Painting } from '../../../../app/core/decisions/painting.ts';
import { choiceSentence } from '../../../../app/core/words/reading/study.ts';
import { createChoosing } from '../../../../app/state/painting/choosing.ts';
import {
  faultOf,
  type MadePictures,
  madePictures,
  madeStore,
} from '../../../support/state/made-store.ts';
import {
  newPlanSample,
  paintingSample,
  photoSample,
} from '../../../support/storage/kept-samples.ts';

const { kept } = newPlanSample('any');

async function choosingAmong(...ids: string[]) {
  let now = 1000;
  const store = await madeStore({ readTimeMs: () => now++ });
  const candidate = (id: string, at: number): Painting => ({
    ...paintingSample(id, `photo ${id}`, at),
    createdAt: at,
    purpose: 'candidate',
  });
  for (const [i, id] of ids.entries())
    await store.addPainting(candidate(id, 100 + i), photoSample(`photo ${id}`));
  await store.addPainting(
    paintingSample('another painting', 'its photo'),
    photoSample('its photo'),
  );
  const handed: MadePictures[] = [];
  const read = vi.fn<AnalysisClient['read']>(async (_signal, _request, onPictures) => {
    const pictures = madePictures();
    handed.push(pictures);
    onPictures(pictures);
    return {
      ...kept,
      bandMap: new Uint8Array(0),
      lightnessMap: new Uint8Array(0),
      thumbnail: new Uint8Array([5]).buffer,
    };
  });
  const chosen: Painting[] = [];
  const choosing = createChoosing({
    store,
    client: { read } as unknown as AnalysisClient,
    onChosen: (painting) => chosen.push(painting),
  });
  return { choosing, store, read, handed, chosen };
}

const sentences = ({ candidates }: Awaited<ReturnType<typeof choosingAmong>>['choosing']) =>
  candidates.value.map(({ painting, sentence }) => [painting.id, sentence]);

test('each is looked at, small, and told in a few words', async () => {
  const { choosing, store, read } = await choosingAmong('a', 'b');
  await choosing.open();
  expect(sentences(choosing)).toEqual([
    ['a', choiceSentence(kept.reading)],
    ['b', choiceSentence(kept.reading)],
  ]);
  expect(read.mock.calls.map(([, { longSidePx, photo }]) => [longSidePx, photo.size])).toEqual([
    [600, 1000],
    [600, 1000],
  ]);
  const rows = await store.paintings();
  const thumbnails = rows.map(({ painting, thumbnail }) => [
    painting.id,
    thumbnail?.byteLength ?? 0,
  ]);
  // The shelf has the newest first, the choice the order they were picked in.
  expect(thumbnails).toEqual([
    ['b', 1],
    ['a', 1],
    ['another painting', 0],
  ]);
});

test('one that can not be looked at says why, the others go on', async () => {
  const { choosing, read, store } = await choosingAmong('a', 'b', 'c');
  read.mockImplementationOnce(() => Promise.reject(faultOf('PhotoError', 'This is no photo.')));
  const photo = store.photo;
  vi.spyOn(store, 'photo').mockImplementation((id) =>
    id === 'photo b' ? Promise.resolve(null) : photo(id),
  );
  await choosing.open();
  expect(sentences(choosing).map(([, sentence]) => sentence?.slice(0, 12))).toEqual([
    'This is no p',
    undefined, // its photo is not there any more
    'A full range',
  ]);
});

test('left, the looking stops and all pictures are given back', async () => {
  const { choosing, read, handed } = await choosingAmong('a', 'b', 'c');
  let stopped = false;
  const first = read.getMockImplementation();
  read.mockImplementationOnce((...given) => first?.(...given) as never);
  read.mockImplementationOnce(
    (signal) =>
      new Promise((_, reject) => {
        signal.addEventListener('abort', () => {
          stopped = true;
          reject(signal.reason);
        });
      }),
  );
  const opening = choosing.open();
  await expect.poll(() => read.mock.calls.length).toBe(2);
  choosing.leave();
  await opening;
  expect([stopped, read.mock.calls.length]).toEqual([true, 2]);
  expect([choosing.candidates.value, choosing.problem.value]).toEqual([[], null]);
  expect(handed.map(({ grey, reference }) => [grey.closed, reference.closed])).toEqual([[1, 1]]);
});

test('the chosen one is painted, the others are put away and can be brought back', async () => {
  const { choosing, store, chosen } = await choosingAmong('a', 'b', 'c');
  await choosing.open();
  await choosing.choose('b');
  expect(chosen).toMatchObject([{ id: 'b' }]);
  expect('purpose' in (chosen[0] as Painting)).toBe(false);
  expect((await store.painting('b'))?.purpose).toBeUndefined();
  expect((await store.paintings()).map(({ painting }) => painting.id)).toEqual([
    'b',
    'another painting',
  ]);
  expect((await store.paintingsPutAway()).map(({ id }) => id).sort()).toEqual(['a', 'c']);
});

test('a fault of keeping is said', async () => {
  const { choosing, store, chosen } = await choosingAmong('a');
  await choosing.open();
  await store.discard('a');
  await choosing.choose('a');
  expect(choosing.problem.value).toMatch(/no longer here/);
  expect(chosen).toEqual([]);
  vi.spyOn(store, 'paintings').mockRejectedValueOnce(faultOf('StorageError', 'Not to be read.'));
  await choosing.open();
  expect(choosing.problem.value).toBe('Not to be read.');
});
