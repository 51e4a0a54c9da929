import { geometricMiddle } from '../../drying/learn-pace.ts';
import { maxWashes } from '../../drying/paper-choice.ts';
import { brushPointMm, smallShapeMm } from '../../limits.ts';
import type { White } from '../../reading/whites/whites.ts';
import type { Step } from '../plan.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { plannedWhites } from '../steps/white-steps.ts';
import { colourWarning, darkWarning, shapeWarning, valueWarning } from './colour-warnings.ts';
import type { PlanWarning } from './plan-warning.ts';

/** Most washes over any one place. */
function mostLayers({ slots }: PlanFacts, steps: readonly Step[]): number {
  const washes = steps.filter(({ kind }) => kind === 'wash');
  const over = slots.map((_, i) => washes.filter((step) => step.slots.includes(i)).length);
  return Math.max(0, ...over);
}

/** More washes over each other than her paper bears. */
export function layersWarning(facts: PlanFacts, steps: readonly Step[]): PlanWarning | null {
  const most = maxWashes(facts.paper);
  const layers = mostLayers(facts, steps);
  if (layers <= most) return null;
  return {
    code: 'too-many-layers',
    text: { say: 'reach/layers', layers, bears: most, paper: facts.paper },
  };
}

/** Width of one pass of the brush of a first wash, mm (own: a mop, or a flat of an inch and a half). */
const passMm = 40;
/** On a small sheet she takes a smaller one: a wash is at least so many passes (own). */
const fewestPasses = 4;

/**
 * Of wet-in-wet painting this much is done while the sheet shines, the rest goes in at satin; and a bead is met
 * within this much of the time it shines (own).
 */
const whileShiny = 0.8;

const isFirst = (step: Step): boolean => step.kind === 'wash' && step.key.split('/')[2] === '1';

/**
 * Minutes a wash is short of its open time; 0 or less where it can be kept wet. On dry paper one pass must
 * still shine when the next one meets it; on wet paper most must be in while the sheet shines. Both in the middle
 * of their ranges. Later washes on dry paper are not looked at: they end at the borders of their shapes (own).
 */
function shortBy({ reading }: PlanFacts, step: Step): number {
  const work = geometricMiddle(step.paintMinutes);
  const open = geometricMiddle(step.shineMinutes);
  if (step.technique === 'wet-in-wet') return whileShiny * work - open;
  if (!isFirst(step) || step.technique !== 'wet on dry') return 0;
  const passes = Math.max(fewestPasses, reading.sheet.heightMm / passMm);
  return work / passes - whileShiny * open;
}

/** Warns of the wash with the largest time shortage: it dries before she can finish it. */
function openTimeWarning(facts: PlanFacts, steps: readonly Step[]): PlanWarning | null {
  const short = steps
    .filter(({ kind }) => kind === 'wash')
    .map((step) => ({ step, by: shortBy(facts, step) }))
    .filter(({ by }) => by > 0)
    .sort((one, two) => two.by - one.by);
  const [worst] = short;
  if (!worst) return null;
  const { title, technique, paintMinutes, shineMinutes, key } = worst.step;
  return {
    code: 'wash-too-large',
    text: {
      say: technique === 'wet-in-wet' ? 'reach/wet-too-large' : 'reach/dry-too-large',
      title,
      work: paintMinutes,
      open: shineMinutes,
    },
    step: key,
  };
}

/** Whether the first wash of a white's passage goes on wet paper. */
function isWetRound({ slots }: PlanFacts, steps: readonly Step[], { slot }: White): boolean {
  const passage = slots[slot]?.passage;
  const first = steps.find(({ kind, key }) => kind === 'wash' && key.split('/')[1] === passage);
  return first?.technique === 'wet-in-wet';
}

/** Readings from before whites were listed: the small ones drown in a wet wash that is not masked. */
function unlisted({ reserves }: PlanFacts, steps: readonly Step[]): PlanWarning | null {
  const wet = steps.some(({ kind, technique }) => kind === 'wash' && technique === 'wet-in-wet');
  const masked = steps.some(({ kind }) => kind === 'mask');
  const { smallCount } = reserves;
  if (!wet || masked || smallCount === 0) return null;
  return { code: 'whites-too-small', text: { say: 'reach/whites-drown', count: smallCount } };
}

/** Whites too small for a brush to go round: those it is planned for all the same, else how they are kept. */
export function whitesWarning(facts: PlanFacts, steps: readonly Step[]): PlanWarning | null {
  const by = plannedWhites(facts);
  if (!by) return unlisted(facts, steps);
  const limit = (white: White): number =>
    isWetRound(facts, steps, white) ? smallShapeMm : brushPointMm;
  const tooSmall = (list: readonly White[]): number =>
    list.filter((white) => white.shortSideMm < limit(white)).length;
  const [round, masked, last] = [tooSmall(by.round), tooSmall(by.mask), tooSmall(by.last)];
  if (round + masked + last === 0) return null;
  return {
    code: 'whites-too-small',
    text:
      round > 0
        ? { say: 'reach/whites-round', count: round }
        : { say: 'reach/whites-kept', masked, last },
  };
}

/** The figures a plan is compared with. */
interface Wanted {
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
): PlanWarning[] {
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
