import type { StageName } from '../../app/core/reading/reading-stages.ts';
import type { PhotoBytes } from './bench.ts';
import { readBytes } from './read-bytes.ts';

/** Stages of a reading from a photograph's bytes on; the working raster comes first. */
export type TimedStage = 'raster' | StageName;

/**
 * Reads a photograph once and tells what each stage took, by a clock that answers ms; `between` is called at every
 * checkpoint, outside the times.
 */
export async function stageTimes(
  photo: PhotoBytes,
  clock: () => number,
  between: (stage: TimedStage) => void = () => {},
): Promise<Partial<Record<TimedStage, number>>> {
  const times: Partial<Record<TimedStage, number>> = {};
  let since = clock();
  const tell = (stage: TimedStage): void => {
    times[stage] = (times[stage] ?? 0) + clock() - since;
    between(stage);
    since = clock();
  };
  await readBytes(
    photo,
    {},
    {
      opened: () => tell('raster'),
      checkpoint: async (_part, _phase, stage) => tell(stage),
    },
  );
  return times;
}
