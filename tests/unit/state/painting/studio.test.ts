import { signal } from '@preact/signals';
import { describe, expect, test, vi } from 'vitest';
import type { AnalysisClient } from '../../../../app/client/analysis-client.ts';
import type { CrashGuard } from '../../../../app/client/crash-guard.ts';
import type { Painting } from '../../../../app/core/decisions/painting.ts';
import { usualAir } from '../../../../app/core/drying/conditions.ts';
import { emptyBox } from '../../../../app/core/paint/own-box.ts';
import { createStudio } from '../../../../app/state/painting/studio.ts';
import type { Store } from '../../../../app/storage/open-store.ts';
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
  planSample,
} from '../../../support/storage/kept-samples.ts';

const { kept } = newPlanSample('any');

/** A studio over a real store; the worker answers by hand, the crash guard remembers what it was told. */
function studioOver(store: Store, changed: { readonly waits?: boolean } = {}) {
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
    openPhoto: vi.fn<AnalysisClient['openPhoto']>(async () => ({
      width: 40,
      height: 30,
      preview: madePictures().grey,
    })),
  };
  const told: string[] = [];
  const guard: CrashGuard = {
    left: null,
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

async function storeWith(...paintings: Painting[]): Promise<Store> {
  const store = await madeStore();
  for (const painting of paintings)
    await store.addPainting(painting, photoSample(painting.reference.photoId));
  return store;
}

const meadow = paintingSample('meadow', 'photo');
const hour = { kind: 'evening', minutes: 60 } as const;

describe('a painting opened for the first time', () => {
  test('is read, shown and planned, and all of it is kept', async () => {
    const store = await storeWith(meadow);
    const { studio, client, told, handed } = studioOver(store);
    await studio.open('meadow');
    expect(studio.plan.value).toEqual(planSample('plan 1'));
    expect(studio.seen.value?.slotMap).toEqual(kept.slotMap);
    expect(studio.pictures.value?.grey).toBe(handed[0]?.grey);
    expect([studio.work.value, studio.problem.value, studio.waits.value]).toEqual([
      null,
      null,
      false,
    ]);
    expect(told).toEqual(['photo at 1600', 'ended']);
    const [, request] = client.read.mock.calls[0] ?? [];
    const { crop, sheet } = meadow.reference;
    expect(request).toMatchObject({ crop, sheet, longSidePx: 1600 });
    expect(request?.photo.size).toBe(1000);
    expect((await store.painting('meadow'))?.planIds).toEqual(['plan 1']);
    expect(studio.painting.value?.planIds).toEqual(['plan 1']);
    const [row] = await store.paintings();
    expect([...new Uint8Array(row?.thumbnail ?? new ArrayBuffer(0))]).toEqual([7, 8]);
  });

  test('says what is being done', async () => {
    const store = await storeWith(meadow);
    const { studio } = studioOver(store);
    const stages: string[] = [];
    const stop = studio.work.subscribe((work) => work && stages.push(`${work.stage} ${work.part}`));
    await studio.open('meadow');
    stop();
    expect(stages).toEqual(['opening 0', 'values 0.5']);
  });

  test('opened again stays as it is', async () => {
    const { studio, client } = studioOver(await storeWith(meadow));
    await studio.open('meadow');
    await studio.open('meadow');
    expect([client.read.mock.calls.length, client.plan.mock.calls.length]).toEqual([1, 1]);
  });

  test('a photo that crashed the app before is read smaller, and only when asked for', async () => {
    const store = await storeWith(paintingSample('meadow', 'small'));
    const { studio, client, told } = studioOver(store, { waits: true });
    await studio.open('meadow');
    expect([studio.waits.value, client.read.mock.calls.length]).toEqual([true, 0]);
    await studio.open('meadow'); // coming back to the screen is not asking
    expect(client.read.mock.calls.length).toBe(0);
    studio.again();
    await expect.poll(() => studio.plan.value?.id).toBe('plan 1');
    expect([studio.waits.value, told[0]]).toEqual([false, 'small at 800']);
  });
});

describe('a painting known from before', () => {
  test('is neither read nor planned: its pictures are made from what was kept', async () => {
    const store = await storeWith(meadow);
    await studioOver(store).studio.open('meadow');
    const { studio, client, told } = studioOver(store);
    await studio.open('meadow');
    expect(studio.plan.value?.id).toBe('plan 1');
    expect(studio.seen.value?.slotMap).toEqual(kept.slotMap);
    expect(studio.pictures.value).not.toBeNull();
    expect(
      [client.read, client.plan, client.pictures].map((call) => call.mock.calls.length),
    ).toEqual([0, 0, 1]);
    expect(told).toEqual([]);
  });

  test('that is gone is said', async () => {
    const { studio } = studioOver(await storeWith());
    await studio.open('meadow');
    expect(studio.problem.value).toMatch(/not on this device any more/);
    expect(studio.painting.value).toBeNull();
  });

  test('another one opened: nothing of the first is shown, its pictures are given back', async () => {
    const store = await storeWith(meadow, paintingSample('shore', 'other'));
    const { studio, client, handed } = studioOver(store);
    await studio.open('meadow');
    const opening = studio.open('shore');
    expect([studio.seen.value, studio.plan.value, studio.pictures.value]).toEqual([
      null,
      null,
      null,
    ]);
    await opening;
    expect([studio.painting.value?.id, studio.plan.value?.id]).toEqual(['shore', 'plan 2']);
    expect(client.read.mock.calls.length).toBe(2);
    await expect
      .poll(() => handed.map(({ grey, reference }) => [grey.closed, reference.closed]))
      .toEqual([
        [1, 1],
        [0, 0],
      ]);
  });
});

describe('a decision', () => {
  test('about the plan alone makes a new plan over the same reading', async () => {
    const store = await storeWith(meadow);
    const { studio, client } = studioOver(store);
    await studio.open('meadow');
    await studio.decide(hour);
    expect([client.read.mock.calls.length, client.plan.mock.calls.length]).toEqual([1, 2]);
    expect(client.plan.mock.calls[1]?.[2]).toMatchObject({ evening: 60 });
    expect(studio.plan.value?.id).toBe('plan 2');
    const painting = await store.painting('meadow');
    expect(painting?.decisions).toMatchObject([hour]);
    expect(painting?.planIds).toEqual(['plan 1', 'plan 2']);
    // Back as it was: the plan of then, now the one to paint by.
    await studio.decide({ kind: 'evening', minutes: null });
    expect([client.plan.mock.calls.length, studio.plan.value?.id]).toEqual([2, 'plan 1']);
    expect((await store.painting('meadow'))?.planIds).toEqual(['plan 2', 'plan 1']);
  });

  test('about values reads anew; what was seen stays shown until then', async () => {
    const { studio, client, handed } = studioOver(await storeWith(meadow));
    await studio.open('meadow');
    const before = studio.seen.value;
    const deciding = studio.decide({ kind: 'bands', count: 3 });
    expect(studio.painting.value?.decisions).toMatchObject([{ kind: 'bands', count: 3 }]); // at once
    expect(studio.seen.value).toBe(before);
    await deciding;
    expect(client.read.mock.calls[1]?.[1].wishes).toMatchObject({ bands: 3 });
    expect(studio.seen.value).not.toBe(before);
    expect(studio.pictures.value?.grey).toBe(handed[1]?.grey);
  });

  test('that fails leaves what was shown and gives its pictures back', async () => {
    const { studio, client, handed } = studioOver(await storeWith(meadow));
    await studio.open('meadow');
    const early = madePictures();
    client.read.mockImplementationOnce(async (_signal, _request, onPictures) => {
      onPictures(early);
      throw faultOf('AnalysisError', 'It stopped.');
    });
    await studio.decide({ kind: 'bands', count: 3 });
    expect(studio.problem.value).toBe('It stopped.');
    expect([early.grey.closed, early.reference.closed]).toEqual([1, 1]);
    expect(studio.pictures.value?.grey).toBe(handed[0]?.grey);
    expect(studio.plan.value?.id).toBe('plan 1');
    studio.again();
    await expect.poll(() => studio.plan.value?.id).toBe('plan 2');
    expect(studio.problem.value).toBeNull();
  });

  test('noted is kept, and worked out when the painting is opened again', async () => {
    const store = await storeWith(meadow);
    const { studio, client } = studioOver(store);
    await studio.open('meadow');
    await studio.note(hour);
    expect((await store.painting('meadow'))?.decisions).toMatchObject([hour]);
    expect(client.plan.mock.calls.length).toBe(1);
    await studio.open('meadow');
    expect([client.plan.mock.calls.length, studio.plan.value?.id]).toEqual([2, 'plan 2']);
  });

  test('two made at once are both kept', async () => {
    const store = await storeWith(meadow);
    const { studio } = studioOver(store);
    await studio.open('meadow');
    await Promise.all([studio.note(hour), studio.note({ kind: 'washes', count: 2 })]);
    const kinds = ({ decisions }: Painting) => decisions.map(({ kind }) => kind);
    expect(kinds(studio.painting.value as Painting)).toEqual(['evening', 'washes']);
    expect(kinds((await store.painting('meadow')) as Painting)).toEqual(['evening', 'washes']);
  });

  test('that could not be kept is said and counts all the same', async () => {
    const store = await storeWith(meadow);
    const { studio } = studioOver(store);
    await studio.open('meadow');
    await store.discard('meadow');
    await studio.note(hour);
    expect(studio.problem.value).toMatch(/no longer here/);
    expect(studio.painting.value?.decisions).toMatchObject([hour]);
  });

  test('another sheet is kept and read when opened', async () => {
    const store = await storeWith(meadow);
    const { studio, client } = studioOver(store);
    await studio.open('meadow');
    const sheet = { format: 'own', widthMm: 200, heightMm: 150 } as const;
    const crop = { centre: [0.5, 0.5], size: [0.5, 0.5], turn: 0 } as const;
    await studio.setReference(sheet, crop);
    expect((await store.painting('meadow'))?.reference).toEqual({ photoId: 'photo', sheet, crop });
    expect(client.read.mock.calls.length).toBe(1);
    await studio.open('meadow');
    expect(client.read.mock.calls[1]?.[1]).toMatchObject({ sheet, crop });
  });
});

describe('what she leaves', () => {
  /** A reading that waits for the test, and ends when it is aborted. */
  const waiting: AnalysisClient['read'] = (signal) =>
    new Promise((_, reject) => {
      signal.addEventListener('abort', () => reject(signal.reason));
    });

  test('is stopped without a word, and gone on with when opened again', async () => {
    const { studio, client } = studioOver(await storeWith(meadow));
    client.read.mockImplementationOnce(waiting);
    const opening = studio.open('meadow');
    await expect.poll(() => client.read.mock.calls.length).toBe(1);
    expect(studio.work.value).not.toBeNull();
    await studio.open('meadow'); // under way already
    expect(client.read.mock.calls.length).toBe(1);
    studio.leave();
    expect(studio.work.value).toBeNull();
    await opening;
    expect(studio.problem.value).toBeNull();
    await studio.open('meadow');
    expect(studio.plan.value?.id).toBe('plan 1');
  });

  test('a decision meanwhile ends what is worked out before it', async () => {
    const { studio, client } = studioOver(await storeWith(meadow));
    client.read.mockImplementationOnce(waiting);
    const opening = studio.open('meadow');
    await expect.poll(() => client.read.mock.calls.length).toBe(1);
    await studio.decide({ kind: 'bands', count: 3 });
    await opening;
    expect(client.read.mock.calls.length).toBe(2);
    expect([studio.plan.value?.id, studio.work.value, studio.problem.value]).toEqual([
      'plan 1',
      null,
      null,
    ]);
    client.plan.mockImplementationOnce(
      (signal) =>
        waiting(
          signal,
          null as never,
          () => {},
          () => {},
        ) as never,
    );
    const planning = studio.decide(hour);
    await expect.poll(() => client.plan.mock.calls.length).toBe(2);
    await studio.note({ kind: 'washes', count: 2 });
    await planning;
    expect([studio.plan.value?.id, studio.work.value]).toEqual(['plan 1', null]);
  });
});

describe('a photo that is none', () => {
  const refused = () => Promise.reject(faultOf('PhotoError', 'This is no photo.'));

  test('never read before: its painting is to be taken away', async () => {
    const { studio, client, bad } = studioOver(await storeWith(meadow));
    client.read.mockImplementationOnce(refused);
    await studio.open('meadow');
    expect(bad).toMatchObject([[{ id: 'meadow' }, 'This is no photo.']]);
    expect(studio.problem.value).toBeNull();
  });

  test.each(['AnalysisError', 'PhotoError'])(
    '%s of a painting that has a plan is only said',
    async (name) => {
      const store = await storeWith(meadow);
      await studioOver(store).studio.open('meadow');
      const { studio, client, bad } = studioOver(store);
      client.read.mockImplementation(() => Promise.reject(faultOf(name, 'This is no photo.')));
      await store.changePainting('meadow', (before) => ({
        ...before,
        decisions: [{ id: 'd', at: 1, kind: 'bands', count: 3 }],
      }));
      await studio.open('meadow');
      expect([bad, studio.problem.value]).toEqual([[], 'This is no photo.']);
    },
  );

  test('another fault at the first reading takes nothing away', async () => {
    const { studio, client, bad, told } = studioOver(await storeWith(meadow));
    client.read.mockImplementationOnce(() =>
      Promise.reject(faultOf('AnalysisError', 'It stopped.')),
    );
    await studio.open('meadow');
    expect([bad, studio.problem.value]).toEqual([[], 'It stopped.']);
    expect(told).toEqual(['photo at 1600', 'ended']); // no crash
  });

  test('a photo that is not kept any more is said', async () => {
    const store = await madeStore();
    await store.addPainting(meadow, photoSample('another'));
    const { studio, client } = studioOver(store);
    await studio.open('meadow');
    expect(studio.problem.value).toMatch(/no longer here/);
    expect(await studio.openPhoto(new AbortController().signal)).toBeNull();
    expect(client.read.mock.calls.length).toBe(0);
  });
});

test('a study is read and not planned until she paints it', async () => {
  const store = await storeWith({ ...meadow, purpose: 'study' });
  const { studio, client } = studioOver(store);
  await studio.open('meadow');
  await studio.open('meadow');
  expect([client.read.mock.calls.length, client.plan.mock.calls.length]).toEqual([1, 0]);
  await studio.paintIt();
  expect(studio.plan.value?.id).toBe('plan 1');
  expect((await store.painting('meadow'))?.purpose).toBeUndefined();
  expect(client.read.mock.calls.length).toBe(1);
});

describe('what she asks while looking', () => {
  const never = new AbortController().signal;
  const sizes = { firstWash: 10, second: 5, darks: 2 };

  test('is asked about the picture seen; nothing without one', async () => {
    const { studio, client } = studioOver(await storeWith(meadow));
    expect(await studio.subjectLine(never, [])).toBeNull();
    expect(await studio.washShapes(never, 'second', sizes)).toBeNull();
    expect(await studio.openPhoto(never)).toBeNull();
    expect(client.openPhoto.mock.calls.length).toBe(0);
    await studio.open('meadow');
    expect((await studio.washShapes(never, 'second', sizes))?.count).toBe(3);
    // 40 x 30 px on 381 x 279 mm.
    const pxPerMm = Math.sqrt(1200 / (381 * 279));
    expect(client.washShapes.mock.calls[0]?.[1]).toMatchObject({
      wash: 'second',
      sizes,
      size: { width: 40, height: 30 },
      pxPerMm,
    });
    await studio.subjectLine(never, []);
    expect(client.subjectLine.mock.calls[0]?.[1]).toMatchObject({
      longSidePx: 40,
      pxPerMm,
      strokes: [],
    });
    expect(await studio.openPhoto(never)).toMatchObject({ width: 40, height: 30 });
  });

  test('a photo that can not be opened is said, unless she has gone on', async () => {
    const { studio, client } = studioOver(await storeWith(meadow));
    await studio.open('meadow');
    client.openPhoto.mockImplementation(() => Promise.reject(faultOf('PhotoError', 'No photo.')));
    const stopped = new AbortController();
    stopped.abort();
    expect(await studio.openPhoto(stopped.signal)).toBeNull();
    expect(studio.problem.value).toBeNull();
    expect(await studio.openPhoto(never)).toBeNull();
    expect(studio.problem.value).toBe('No photo.');
  });
});
