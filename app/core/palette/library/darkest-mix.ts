import { combinations } from '../../numeric/combinations.ts';
import type { LastAnswers } from '../../numeric/memo.ts';
import { isWhiteOrBlack, type Paint } from '../../paint/paint.ts';
import { paintBox } from '../../paint/paint-box.ts';
import type { Checkpoint } from '../checkpoint.ts';
import { GroupMixer } from './mix-library.ts';

/** L* of the darkest single wash that mixes of at most two of these paints reach on white paper. */
export function darkestOf(paints: readonly Paint[]): number {
  const mixer = new GroupMixer(paints);
  return setsOf(paints).reduce((least, set) => Math.min(least, mixer.mix(set).darkest), 100);
}

const setsOf = (paints: readonly Paint[]): number[][] =>
  [1, 2].flatMap((size) => combinations(paints.length, size));

/** Groups between two checkpoints: some milliseconds of work. */
const stretch = 40;

/** The same with pauses, from `known` if it is there: for a whole box, worked out at one go, it holds a cancel up too long. */
export async function darkestInSteps(
  paints: readonly Paint[],
  checkpoint: Checkpoint,
  known: LastAnswers<number>,
): Promise<number> {
  const key = JSON.stringify(paints.map(({ id, revision }) => [id, revision]));
  const before = known.get(key);
  if (before !== undefined) return before;
  const mixer = new GroupMixer(paints);
  const sets = setsOf(paints);
  let darkest = 100;
  for (const [n, set] of sets.entries()) {
    if (n % stretch === 0) await checkpoint(n / sets.length);
    darkest = Math.min(darkest, mixer.mix(set).darkest);
  }
  known.keep(key, darkest);
  return darkest;
}

/** What a reading counts on: the built-in paints without whites and blacks. */
export const usualPaints: readonly Paint[] = paintBox.filter((paint) => !isWhiteOrBlack(paint.ci));
