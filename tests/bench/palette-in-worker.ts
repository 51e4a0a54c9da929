// The search for a palette, timed where it runs: with nothing kept, and again for another picture of the same box.
import { isWhiteOrBlack } from '../../app/model/paint.ts';
import type { Reading } from '../../app/model/reading.ts';
import { paintBox } from '../../workers/kernels/optics/paint-box.ts';
import { noCheckpoint } from '../../workers/kernels/palette/checkpoint.ts';
import { keptLibrary } from '../../workers/kernels/palette/kept-library.ts';
import { openSearch } from '../../workers/kernels/palette/open-search.ts';
import seedHeads from '../fixtures/readings/seed-heads.json';

export interface SearchTimes {
  readonly paints: number;
  readonly targets: number;
  readonly cost: number;
  /** ms: the first search in a fresh worker, then with the mixes kept. */
  readonly cold: number;
  readonly warm: readonly number[];
  readonly libraryBytes: number;
  readonly tableBytes: number;
}

/** Whites and blacks are let in as if they were any paint, so that all 33 are searched. */
const all = paintBox.map((paint) => (isWhiteOrBlack(paint.ci) ? { ...paint, ci: ['any'] } : paint));
const { slots } = seedHeads as unknown as Reading;

self.onmessage = async ({ data }: MessageEvent<{ readonly rounds: number }>) => {
  const times: number[] = [];
  const search = () => openSearch(slots, all, { paletteSize: 5 }, noCheckpoint);
  for (let round = 0; round <= data.rounds; round++) {
    const since = performance.now();
    await search();
    times.push(performance.now() - since);
  }
  const { tables, targets, ties, paints } = await search();
  const { groups } = await keptLibrary(paints, noCheckpoint);
  const answer: SearchTimes = {
    paints: paints.length,
    targets: targets.length,
    cost: ties[0]?.cost ?? Number.NaN,
    cold: times[0] ?? Number.NaN,
    warm: times.slice(1),
    libraryBytes: groups.reduce(
      (all, { lightness, chroma }) => all + lightness.byteLength + chroma.byteLength,
      0,
    ),
    tableBytes: tables.costs.byteLength + tables.darkest.byteLength + tables.leastFrom.byteLength,
  };
  self.postMessage(answer);
};
