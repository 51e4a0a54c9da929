import { minuteMs } from '../limits.ts';
import type { PastSession } from './drying-history.ts';
import { foldSession, orderEvents } from './fold-session.ts';
import type { PhotoNote } from './session-record.ts';

/** One time a painting was painted, as it stands in the row of all of them. */
export interface Attempt {
  readonly sessionId: string;
  /** Wall time, ms since 1970; `finishedAt` is null while it runs. */
  readonly startedAt: number;
  readonly finishedAt: number | null;
  readonly minutes: number;
  /** Her photo of how it came out; null where she took none. */
  readonly photoId: string | null;
}

/**
 * The photo that shows the finished painting: the last one taken at the end, at the last step or after it; null where
 * all were taken on the way.
 */
export function paintingPhoto(
  photos: readonly PhotoNote[],
  finishedAt: number | null,
  lastKey: string | undefined,
): PhotoNote | null {
  const isAtEnd = (photo: PhotoNote): boolean =>
    photo.stepKey === lastKey || (finishedAt !== null && photo.at >= finishedAt);
  return photos.findLast(isAtEnd) ?? null;
}

/** All times a painting was begun, in their order; a session without a line is none. */
export function listAttempts(past: readonly PastSession[], paintingId: string): Attempt[] {
  return past
    .filter((each) => each.paintingId === paintingId && each.events.length > 0)
    .map(({ sessionId, steps, events }) => {
      const log = orderEvents(events);
      const { startedAt, finishedAt, finishedAtMs, atMs } = foldSession(steps, log);
      const photos = log.flatMap(({ what, wallMs }) =>
        what.kind === 'photo' ? [{ photoId: what.photoId, at: wallMs, stepKey: what.key }] : [],
      );
      const shown = paintingPhoto(photos, finishedAt, steps.at(-1)?.key);
      return {
        sessionId,
        startedAt: startedAt ?? events[0]?.wallMs ?? 0,
        finishedAt,
        minutes: (finishedAtMs ?? atMs) / minuteMs,
        photoId: shown?.photoId ?? null,
      };
    })
    .sort((a, b) => a.startedAt - b.startedAt);
}
