import type { PlanEdit } from '../../../../app/model/plan-edit.ts';
import { dryStep } from '../dry-step.ts';
import { darkestSlots, placesToLift, placesToSplatter } from '../finishing-places.ts';
import { accentsStep, liftStep, splatterStep } from '../finishing-steps.ts';
import type { PlanFacts } from '../plan-facts.ts';
import { otherWork, type PlanWork } from '../plan-work.ts';
import { lastRows } from '../planned-work.ts';
import type { StepDraft } from '../step-draft.ts';
import { partOfWash } from './part-of-wash.ts';

type Added = Extract<PlanEdit, { kind: 'add' }>;

const painted = ({ slots }: PlanFacts): number[] =>
  [...slots.keys()].filter((i) => slots[i] && !slots[i]?.reserve && slots[i]?.share);

/** One more layer of a row over all it was laid on; null where there is no such row. */
function oneMoreLayer(facts: PlanFacts, id: string, mix: string | null): PlanWork | null {
  for (const { passage, washes } of facts.passages) {
    for (const wash of washes) {
      const row = wash.mixes.find((each) => each.id === mix && each.parts.length > 0);
      if (!row) continue;
      const own = wash.slots.filter((i) => facts.slots[i]?.family === row.family);
      return {
        kind: 'wash',
        key: `wash/${passage}/${wash.wash}/add-${id}`,
        passage,
        wash: partOfWash(wash, facts.slots, own),
        technique: 'glaze',
        change: 'once more',
      };
    }
  }
  return null;
}

/** Where lifting does something, else the lightest shapes that are painted. */
function liftable(facts: PlanFacts): number[] {
  const places = placesToLift(facts);
  if (places.length > 0) return places;
  const all = painted(facts);
  const lightest = Math.min(...all.map((i) => facts.slots[i]?.band ?? 0));
  return all.filter((i) => facts.slots[i]?.band === lightest);
}

/** Where spots look at home, else where the most small shapes are. */
function splattered(facts: PlanFacts): number[] {
  const places = placesToSplatter(facts);
  if (places.length > 0) return places;
  const all = painted(facts);
  const most = Math.max(...all.map((i) => facts.slots[i]?.smallShapes ?? 0));
  return all.filter((i) => facts.slots[i]?.smallShapes === most);
}

function addedDraft(facts: PlanFacts, { what, after }: Added): StepDraft {
  switch (what) {
    case 'lift':
      return liftStep(facts, liftable(facts));
    case 'splatter': {
      const slots = splattered(facts);
      return splatterStep(facts, slots, lastRows(facts, slots));
    }
    case 'accents': {
      const slots = darkestSlots(facts);
      return accentsStep(facts, slots, lastRows(facts, slots));
    }
    default:
      return dryStep(facts, after ?? '');
  }
}

/** A step she puts in, or null where what it is made from is not there. */
export function addedWork(facts: PlanFacts, edit: Added): PlanWork | null {
  if (edit.what === 'wash') return oneMoreLayer(facts, edit.id, edit.mix);
  return otherWork({ ...addedDraft(facts, edit), key: `${edit.what}/sheet/add-${edit.id}` });
}
