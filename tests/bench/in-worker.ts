// What the page's worker does with one photograph, timed where it runs: the first call in a fresh worker, and warm.
import { reducePicture } from '../../workers/kernels/pixels/raster-reducer.ts';
import { readPicture } from '../../workers/kernels/read-picture.ts';
import { warmReading } from '../../workers/warm-reading.ts';
import type { PhotoBytes } from './bench.ts';
import { ourChain } from './our-steps.ts';

export interface WorkerTask {
  readonly photo: PhotoBytes;
  readonly work: 'chain' | 'reading' | 'reading after warming up';
  readonly rounds: number;
}

const noPause = async (): Promise<void> => {};

async function once({ photo, work }: WorkerTask): Promise<unknown> {
  if (work === 'chain') return ourChain(photo, 5, 400);
  return readPicture(
    {
      ...reducePicture(photo.rgba, photo, photo),
      sheet: { widthMm: 381, heightMm: 286 },
      wishes: {},
      darkest: 25,
      paper: 95,
    },
    noPause,
  );
}

self.onmessage = async ({ data }: MessageEvent<WorkerTask>) => {
  if (data.work === 'reading after warming up') await warmReading(noPause);
  const times: number[] = [];
  for (let round = 0; round < data.rounds; round++) {
    const since = performance.now();
    await once(data);
    times.push(performance.now() - since);
  }
  self.postMessage(times);
};
