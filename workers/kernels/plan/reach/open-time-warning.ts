import { middleOf } from '../../../../app/model/drying/taught-range.ts';
import { minutesInWords } from '../../../../app/model/minutes-in-words.ts';
import type { Warning } from '../../../../app/model/reading.ts';
import type { Step } from '../../../../app/model/wash-plan.ts';
import type { PlanFacts } from '../plan-facts.ts';

/** Width of one pass of the brush of a first wash, mm (own figure: a mop, or a flat of an inch and a half). */
const passMm = 40;
/** On a small sheet she takes a smaller one: a wash is at least so many passes (own figure). */
const fewestPasses = 4;

/**
 * Of wet-in-wet painting this much is done while the sheet shines, the rest goes in at satin; and a bead is met
 * within this much of the time it shines (own figure).
 */
const whileShiny = 0.8;

const isFirst = (step: Step): boolean => step.kind === 'wash' && step.key.split('/')[2] === '1';

/**
 * Minutes a wash is short of its open time; 0 or less where it can be kept wet. On dry paper one pass must
 * still shine when the next one meets it; on wet paper most must be in while the sheet shines. Both in the middle
 * of their ranges. Later washes on dry paper are not looked at: they end at the borders of their shapes. Own rule.
 */
function shortBy({ reading }: PlanFacts, step: Step): number {
  const work = middleOf(step.paintMinutes);
  const open = middleOf(step.shineMinutes);
  if (step.technique === 'wet-in-wet') return whileShiny * work - open;
  if (!isFirst(step) || step.technique !== 'wet on dry') return 0;
  const passes = Math.max(fewestPasses, reading.sheet.heightMm / passMm);
  return work / passes - whileShiny * open;
}

function sentenceOf(step: Step): string {
  const work = minutesInWords(step.paintMinutes);
  const open = minutesInWords(step.shineMinutes);
  return step.technique === 'wet-in-wet'
    ? `${step.title} is too large for its open time: it takes ${work}, and in this air the wet sheet shines for ${open}. Split it at a hard border, take a smaller sheet, or soak the paper through from both sides.`
    : `${step.title} is too large for its open time: it takes ${work}, and in this air an edge stays wet for ${open}, so seams would show. Split it at a border, or wet the sheet first.`;
}

/** The wash that dries before she can be through with it: the one that is shortest of time. */
export function openTimeWarning(facts: PlanFacts, steps: readonly Step[]): Warning | null {
  const short = steps
    .filter(({ kind }) => kind === 'wash')
    .map((step) => ({ step, by: shortBy(facts, step) }))
    .filter(({ by }) => by > 0)
    .sort((one, two) => two.by - one.by);
  const [worst] = short;
  return worst ? { code: 'wash-too-large', text: sentenceOf(worst.step) } : null;
}
