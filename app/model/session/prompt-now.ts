import { dryPrompt, leaveIt } from '../drying/bone-dry-sign.ts';
import { coolTestWorks } from '../drying/cool-test.ts';
import type { Step } from '../wash-plan.ts';
import type { SessionState } from './session-state.ts';
import type { EaselTime } from './time-left.ts';

/**
 * The sentence of a step as things stand. At a drying check it follows the sheet and the air: once
 * the shine has gone it says in so many words to leave it, and in air where the hand can tell nothing
 * it does not ask for the hand.
 */
export function promptNow(
  step: Pick<Step, 'kind' | 'prompt'>,
  { phase, timer, weather }: Pick<SessionState, 'phase' | 'timer' | 'weather'>,
  { shine }: Pick<EaselTime, 'shine'>,
): string {
  if (step.kind !== 'dry') return step.prompt;
  if (phase === 'drying' && timer) {
    if (timer.shineGoneMs !== null) return leaveIt;
    if (shine && shine.highMs === 0)
      return 'The shine should be gone, the sheet is still cool: leave it. No water, no brush, until it is bone dry.';
  }
  return coolTestWorks(weather) ? dryPrompt.usual : dryPrompt.slow;
}
