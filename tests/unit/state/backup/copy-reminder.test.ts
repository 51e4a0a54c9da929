import { expect, test } from 'vitest';
import {
  copyTimes,
  findReminder,
  noteCopyTime,
  reminderOf,
} from '../../../../app/state/backup/copy-reminder.ts';
import { madeStore } from '../../../support/state/made-store.ts';
import { paintingSample, photoSample } from '../../../support/storage/kept-samples.ts';

const day = 24 * 3_600_000;
const cards = (...days: number[]) => days.map((n) => ({ updatedAt: n * day }));
const never = { copyAt: 0, awayAt: 0 };

test('three changed paintings are much, and one is after a month; less is not spoken of', () => {
  expect(reminderOf([], never, 99 * day)).toBeNull();
  expect(reminderOf(cards(90, 91), never, 99 * day)).toBeNull();
  expect(reminderOf(cards(90, 91, 92), never, 99 * day)).toMatch(/on this device only/);
  expect(reminderOf(cards(69), never, 99 * day)).toMatch(/on this device only/);
});

test('counted from the last copy, and from when the line was put away', () => {
  const copied = { copyAt: 91.5 * day, awayAt: 0 };
  expect(reminderOf(cards(90, 91, 92), copied, 99 * day)).toBeNull();
  expect(reminderOf(cards(90, 91, 92, 93, 94), copied, 99 * day)).toBe(
    '3 paintings have changed since you last kept a copy.',
  );
  expect(reminderOf(cards(92), copied, 199 * day)).toBe(
    'One painting has changed since you last kept a copy.',
  );
  const away = { copyAt: 0, awayAt: 95 * day };
  expect(reminderOf(cards(90, 91, 92, 93, 94), away, 999 * day)).toBeNull();
});

test('paintings that were taken away or are damaged do not count', () => {
  const some = [
    ...cards(90, 91),
    { updatedAt: 92 * day, deletedAt: 93 * day },
    { updatedAt: 92 * day, damaged: true as const },
  ];
  expect(reminderOf(some, never, 99 * day)).toBeNull();
});

test('what is noted is kept, and a note that is spoilt counts as none', async () => {
  const store = await madeStore();
  for (const id of ['a', 'b', 'c'])
    await store.addPainting(paintingSample(id, `of ${id}`, 5), photoSample(`of ${id}`, 10));
  expect(await findReminder(store, 10)).toMatch(/on this device only/);
  await noteCopyTime(store, { awayAt: 7 });
  expect(await findReminder(store, 10)).toBeNull();
  await noteCopyTime(store, { copyAt: 4 });
  expect(await copyTimes(store)).toEqual({ copyAt: 4, awayAt: 7 });
  await store.keepSetting('last copy', { copyAt: 'yesterday', awayAt: null });
  expect(await copyTimes(store)).toEqual(never);
});
