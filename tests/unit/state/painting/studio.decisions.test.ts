import { describe, expect, test } from 'vitest';
import type { AnalysisClient } from '../../../../app/client/analysis-client.ts';
import type { Painting } from '../../../../app/core/decisions/painting.ts';
import { faultOf, madePictures } from '../../../support/state/made-store.ts';
import { hour, meadow, storeWith, studioOver } from '../../../support/state/made-studio.ts';

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
