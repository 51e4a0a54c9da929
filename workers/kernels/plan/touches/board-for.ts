import { edgeOfBoard } from '../../../../app/model/side.ts';
import { type PlanFacts, rowsOf } from '../plan-facts.ts';
import { runsAsBead } from '../runs-as-bead.ts';
import type { StepDraft } from '../step-draft.ts';
import { gradingsOf } from './graded-wash.ts';
import { washInHand } from './wash-in-hand.ts';

/** Degrees: common practice, no source. */
const tilts = { bead: 15, later: 10, graded: 20 } as const;

function washBoard(facts: PlanFacts, draft: StepDraft): string {
  const wash = washInHand(facts, draft);
  const [grading] = wash ? gradingsOf(wash) : [];
  const raised = grading && edgeOfBoard(grading.strong);
  if (draft.technique === 'wet-in-wet') {
    return raised
      ? `flat while you wet it; then ${raised} raised about ${tilts.graded}°, until the shine starts to go`
      : 'flat, so that the colours stay where they are laid';
  }
  if (raised)
    return `tilted about ${tilts.graded}°, ${raised} raised: the wash runs from strong to thin`;
  if (draft.technique === 'dry brush') return 'flat';
  if (wash?.wash === 1 || draft.technique === 'glaze') {
    return runsAsBead(rowsOf(facts).filter(({ id }) => draft.mixes.includes(id)))
      ? `tilted about ${tilts.bead}°, so that a bead gathers and runs down with you`
      : 'flat: paint so thick does not run';
  }
  return `tilted about ${tilts.later}°, so that each stroke gathers at its lower edge`;
}

/** How the board lies, in words; null where it does not matter. */
export function boardFor(facts: PlanFacts, draft: StepDraft): string | null {
  switch (draft.kind) {
    case 'wash':
      return washBoard(facts, draft);
    case 'splatter':
      return 'flat: drops run on a slope';
    case 'lift':
    case 'accents':
    case 'last-lights':
      return 'flat';
    default:
      return null;
  }
}
