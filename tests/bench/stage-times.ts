import type { ReadingWishes } from '../../app/core/reading/reading.ts';
import type { StageName } from '../../app/core/reading/reading-stages.ts';
import type { PhotoBytes } from './bench.ts';
import { reach, readBytes } from './read-bytes.ts';

/** Stages of a reading from a photograph's bytes on; the working raster comes first. */
export type TimedStage = 'raster' | StageName;

export type StageTimes = Partial<Record<TimedStage, number>>;

interface StageSettings {
  /** Answers ms. */
  readonly clock: () => number;
  /** Called at every checkpoint, outside the times, with the bytes of the room that the reading works in. */
  readonly between?: (stage: TimedStage, roomBytes: number) => void;
  readonly wishes?: ReadingWishes;
  /** Of the working raster; that of the product where left out. */
  readonly longSidePx?: number;
}

/** Reads a photograph once and tells what each stage took, ms. */
export async function stageTimes(
  photo: PhotoBytes,
  { clock, between = () => {}, wishes = {}, longSidePx }: StageSettings,
): Promise<StageTimes> {
  await reach(); // known from then on, so that no stage pays for it
  const times: StageTimes = {};
  let room = 0;
  let since = clock();
  const tell = (stage: TimedStage): void => {
    times[stage] = (times[stage] ?? 0) + clock() - since;
    between(stage, room);
    since = clock();
  };
  await readBytes(photo, wishes, {
    opened: (roomBytes) => {
      room = roomBytes;
      tell('raster');
    },
    checkpoint: async (_part, _phase, stage) => tell(stage),
    ...(longSidePx && { longSidePx }),
  });
  return times;
}
