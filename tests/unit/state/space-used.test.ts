import { expect, test } from 'vitest';
import { createSpaceUsed } from '../../../app/state/space-used.ts';
import { faultOf, madeStore } from '../../support/state/made-store.ts';
import {
  eventSample,
  newPlanSample,
  paintingSample,
  photoSample,
} from '../../support/storage/kept-samples.ts';

const never = new AbortController().signal;

async function storeWithRecord() {
  const store = await madeStore();
  await store.addPainting(paintingSample('small', 'of small'), photoSample('of small', 100_000));
  await store.addPainting(paintingSample('large', 'of large'), photoSample('of large', 2_000_000));
  await store.keepPlan('small', newPlanSample('plan'));
  await store.sessionOf('small', 's');
  await store.keepRecordPhoto('s', photoSample('shot', 3_000_000), 'wash 1');
  await store.appendEvents([
    eventSample('s', 0, { kind: 'photo', photoId: 'shot', key: 'wash 1' }),
  ]);
  return store;
}

test('each painting with all that hangs on it, the largest first', async () => {
  const space = createSpaceUsed(await storeWithRecord());
  await space.open(never);
  expect(space.rows.value.map(({ id }) => id)).toEqual(['small', 'large']);
  const [small, large] = space.rows.value;
  expect(small?.recordPhotoBytes).toBe(3_000_000);
  expect(small?.bytes).toBeGreaterThan(3_100_000);
  expect(large?.bytes).toBeGreaterThanOrEqual(2_000_000);
  expect(large?.bytes).toBeLessThan(2_010_000);
  expect(space.totalBytes.value).toBe((small?.bytes ?? 0) + (large?.bytes ?? 0));
  expect(space.measuring.value).toBe(false);
});

test('record photos deleted: their room is free, the log stays as it was', async () => {
  const store = await storeWithRecord();
  const space = createSpaceUsed(store);
  await space.open(never);
  await space.dropRecordPhotos('small');
  expect(space.rows.value.map(({ id }) => id)).toEqual(['large', 'small']);
  expect(space.rows.value[1]?.recordPhotoBytes).toBe(0);
  expect(await store.photo('shot')).toBeNull();
  expect(await store.photo('of small')).not.toBeNull();
  expect(await store.events('s')).toHaveLength(1);
});

test('what can not be measured is said; left, it stops', async () => {
  const store = await storeWithRecord();
  const fails = createSpaceUsed({
    ...store,
    spaceOf: () => Promise.reject(faultOf('StorageError', 'Not to be read.')),
  });
  await fails.open(never);
  expect([fails.problem.value, fails.measuring.value]).toEqual(['Not to be read.', false]);
  const left = createSpaceUsed(store);
  const leaving = new AbortController();
  leaving.abort();
  await left.open(leaving.signal);
  expect(left.rows.value).toEqual([]);
});
