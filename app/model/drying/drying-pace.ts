/** How she and her paper dry against the model: 1 as predicted, 2 takes twice as long. */
export interface DryingPace {
  readonly shine: number;
  readonly dry: number;
}

/**
 * The pace after one more observation: half a step (on a ratio scale) towards what was seen, within
 * 0.3..3 so that one odd evening does not spoil it. Minutes; what can't be learned from is left out.
 */
export function learnPace(pace: number, actualMinutes: number, predictedMinutes: number): number {
  const ratio = actualMinutes / predictedMinutes;
  if (!Number.isFinite(ratio) || ratio <= 0) return pace;
  return Math.min(3, Math.max(0.3, pace * Math.sqrt(ratio)));
}
