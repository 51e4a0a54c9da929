import { paperInWords } from '../../../../app/model/drying/paper-choice.ts';
import type { Warning } from '../../../../app/model/reading.ts';
import type { Step } from '../../../../app/model/wash-plan.ts';
import { washesBorne } from '../../../../app/model/washes-borne.ts';
import type { PlanFacts } from '../plan-facts.ts';

/** Most washes over any one place. */
function mostLayers({ slots }: PlanFacts, steps: readonly Step[]): number {
  const washes = steps.filter(({ kind }) => kind === 'wash');
  const over = slots.map((_, i) => washes.filter((step) => step.slots.includes(i)).length);
  return Math.max(0, ...over);
}

/** More washes over each other than her paper bears. */
export function layersWarning(facts: PlanFacts, steps: readonly Step[]): Warning | null {
  const most = washesBorne(facts.paper);
  const layers = mostLayers(facts, steps);
  if (layers <= most) return null;
  return {
    code: 'too-many-layers',
    text: `${layers} washes lie over each other; ${paperInWords(facts.paper)}, bears ${most} at most before it roughens and the paint below comes up. Ask for fewer washes, or take heavier paper of cotton.`,
  };
}
