import type { ProgressPhase } from './reading.ts';

interface ReadingStage {
  /** Where it ends, 0..1 of the whole reading, by measured time (`npm run bench -- stages`). */
  readonly ends: number;
  /** How many times it hands back control with a photo of the usual size. */
  readonly pieces: number;
  /** What she is told meanwhile. */
  readonly phase: ProgressPhase;
}

/** The stages of a reading in their order. */
export const readingStages = {
  simplifying: { ends: 0.22, pieces: 25, phase: 'looking' },
  passages: { ends: 0.23, pieces: 16, phase: 'looking' },
  'what stands out': { ends: 0.29, pieces: 40, phase: 'looking' },
  'bands and families': { ends: 0.43, pieces: 13, phase: 'colours' },
  'first shapes': { ends: 0.44, pieces: 5, phase: 'shapes' },
  merging: { ends: 0.46, pieces: 14, phase: 'shapes' },
  shapes: { ends: 0.47, pieces: 5, phase: 'shapes' },
  slopes: { ends: 0.51, pieces: 5, phase: 'shapes' },
  squares: { ends: 0.55, pieces: 20, phase: 'shapes' },
  masses: { ends: 0.58, pieces: 24, phase: 'shapes' },
  edges: { ends: 0.84, pieces: 20, phase: 'shapes' },
  whites: { ends: 0.85, pieces: 7, phase: 'shapes' },
  details: { ends: 1, pieces: 20, phase: 'shapes' },
} as const satisfies Readonly<Record<string, ReadingStage>>;

export type StageName = keyof typeof readingStages;

const names = Object.keys(readingStages) as StageName[];

/** Where a stage begins: where the one before it ends. */
const beginningOf = (stage: StageName): number => {
  const before = names[names.indexOf(stage) - 1];
  return before ? readingStages[before].ends : 0;
};

/** How far the whole reading is, 0..1, after so many pieces of a stage. */
export function partDone(stage: StageName, pieces: number): number {
  const { ends, pieces: expected } = readingStages[stage];
  const from = beginningOf(stage);
  return from + (ends - from) * Math.min(1, pieces / expected);
}

/** Awaited between pieces of some milliseconds; throws to stop. part: 0..1 of the reading. */
export type Checkpoint = (part: number, phase: ProgressPhase, stage: StageName) => Promise<void>;

/** Runs the pieces of one stage, a checkpoint after each. */
export async function staged<T>(
  pieces: Generator<void, T>,
  checkpoint: Checkpoint,
  stage: StageName,
): Promise<T> {
  for (let done = 1; ; done++) {
    const piece = pieces.next();
    await checkpoint(partDone(stage, done), readingStages[stage].phase, stage);
    if (piece.done) return piece.value;
  }
}
