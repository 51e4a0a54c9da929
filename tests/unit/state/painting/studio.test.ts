import { describe, expect, test } from 'vitest';
import { faultOf, madeStore } from '../../../support/state/made-store.ts';
import { kept, meadow, storeWith, studioOver } from '../../../support/state/made-studio.ts';
import { paintingSample, photoSample, planSample } from '../../../support/storage/kept-samples.ts';

describe('a painting opened for the first time', () => {
  test('is read, shown and planned, and all of it is kept', async () => {
    const store = await storeWith(meadow);
    const { studio, client, told, handed } = studioOver(store);
    expect([studio.painting.value, studio.waits.value]).toEqual([null, false]);
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
    expect(studio.problem.value).toMatch(/photo of this painting is no longer/);
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

test('a crop made by a size the photo does not have is put right, kept and read', async () => {
  const store = await storeWith(meadow);
  const { studio, client } = studioOver(store);
  client.read.mockRejectedValueOnce(faultOf('CropError', 'It does not fit.'));
  await studio.open('meadow');
  expect(studio.problem.value).toBeNull();
  // 30 x 40 px on a sheet of 381 x 279 mm, which then stands upright.
  const reference = {
    photoId: 'photo',
    sheet: { format: 'quarter', widthMm: 279, heightMm: 381 },
    crop: { centre: [0.5, 0.5], size: [expect.closeTo((40 * 279) / 381 / 30, 9), 1], turn: 0 },
  };
  expect((await store.painting('meadow'))?.reference).toEqual(reference);
  expect(client.read.mock.calls[1]?.[1]).toMatchObject({ sheet: reference.sheet });
  expect(studio.plan.value).not.toBeNull();
});

test('a note of a crash holds up no reading that was kept before', async () => {
  const store = await storeWith(meadow);
  await studioOver(store).studio.open('meadow');
  const { studio, client } = studioOver(store, { waits: true });
  await studio.open('meadow');
  expect([studio.waits.value, client.read.mock.calls.length]).toEqual([false, 0]);
  expect(studio.plan.value).not.toBeNull();
});
