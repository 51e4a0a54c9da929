import type { Warning } from '../../../../app/model/reading.ts';
import type { Step } from '../../../../app/model/wash-plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { colourWarning, darkWarning, valueWarning } from '../plan-warnings.ts';
import { layersWarning } from './layers-warning.ts';
import { openTimeWarning } from './open-time-warning.ts';
import { shapeWarning } from './shape-warning.ts';
import { whitesWarning } from './whites-warning.ts';

/** What a plan is held against. */
export interface Wanted {
  /** L* of the darkest single wash of the palette, and of what the darkest band asks for. */
  readonly reached: number;
  readonly wanted: number;
  readonly onePaint: boolean;
  /** Whether she chose the colours: then only values are looked at. */
  readonly ownColours: boolean;
}

/** What the plan can't reach, each with cause and what to do, the most important first. */
export function reachWarnings(
  facts: PlanFacts,
  steps: readonly Step[],
  { reached, wanted, onePaint, ownColours }: Wanted,
): Warning[] {
  const { slots } = facts;
  const last = steps.at(-1)?.after ?? [];
  const dark = darkWarning(reached, wanted, onePaint);
  return [
    dark,
    ownColours ? valueWarning(facts, slots, last) : colourWarning(facts, slots, last),
    shapeWarning(facts, last, reached, dark !== null),
    layersWarning(facts, steps),
    openTimeWarning(facts, steps),
    whitesWarning(facts, steps),
  ].filter((warning) => warning !== null);
}
