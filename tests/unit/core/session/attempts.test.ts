import { expect, test } from 'vitest';
import { listAttempts, paintingPhoto } from '../../../../app/core/session/attempts.ts';
import { device, minute, steps } from '../../../support/session/session-log.ts';

const photo = (photoId: string, takenAt: number, stepKey: string) => ({
  photoId,
  at: takenAt,
  stepKey,
});

test('the painting is what was photographed at the end, the last of such photos', () => {
  const photos = [photo('wet', 100, 'wash 1'), photo('last', 900, 'last look')];
  expect(paintingPhoto(photos, null, 'last look')?.photoId).toBe('last');
  expect(paintingPhoto(photos.slice(0, 1), 1000, 'last look')).toBeNull();
  const later = [...photos, photo('in daylight', 5000, 'wash 2')];
  expect(paintingPhoto(later, 1000, 'last look')?.photoId).toBe('in daylight');
  expect(paintingPhoto([], 1000, undefined)).toBeNull();
});

/** A session that ran for some minutes, then was photographed. */
function session(it: ReturnType<typeof device>, id: string, minutes: number, ends = true) {
  const from = it.events.length;
  it.log({ kind: 'started' });
  it.wait(minutes * minute);
  if (ends) it.log({ kind: 'finished' }, { kind: 'photo', photoId: `${id} photo`, key: 'wash 1' });
  const events = it.events.slice(from).map((event, seq) => ({ ...event, seq }));
  return { sessionId: id, paintingId: 'meadow', steps, events };
}

test('all attempts at one painting in their order, each with its time and its photo', () => {
  const it = device();
  const first = session(it, 'first', 90);
  it.wait(600 * minute);
  const second = session(it, 'second', 30, false);
  const other = { ...first, sessionId: 'other', paintingId: 'harbour' };
  const empty = { ...first, sessionId: 'empty', events: [] };
  const found = listAttempts([second, other, empty, first], 'meadow');
  expect(found).toMatchObject([
    { sessionId: 'first', minutes: 90, photoId: 'first photo' },
    { sessionId: 'second', minutes: 0, finishedAt: null, photoId: null },
  ]);
  expect(found[0]?.finishedAt).toBe((found[0]?.startedAt ?? 0) + 90 * minute);
});
