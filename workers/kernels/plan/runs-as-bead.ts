import type { Mix } from '../../../app/model/wash-plan.ts';

const tooThick: ReadonlySet<Mix['consistency']> = new Set(['cream', 'butter']);

/** Whether all that is laid down is thin enough to run down a tilted board (`consistencySign`). */
export const runsAsBead = (mixes: readonly Pick<Mix, 'parts' | 'consistency'>[]): boolean =>
  mixes.every(({ parts, consistency }) => parts.length === 0 || !tooThick.has(consistency));
