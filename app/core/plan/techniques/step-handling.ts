import { edgeOfBoard } from '../../raster/size.ts';
import type { SmallTechnique } from '../plan.ts';
import { areaCm2, type PlanFacts, plannedMixes } from '../plan-facts.ts';
import type { StepDraft } from '../steps/step-draft.ts';
import { runsAsBead } from '../steps/wash-step.ts';
import { plannedWhites } from '../steps/white-steps.ts';
import { negativePainting } from './negative-painting.ts';
import {
  type TechniqueDetector,
  type TechniqueProposal,
  washInHand,
} from './technique-proposal.ts';
import { dampLifting, dryBrush, scraping, waterDrops } from './texture-techniques.ts';
import { charging, gradedWash, gradingsOf, merging } from './wet-techniques.ts';

/**
 * The largest brush that will do it, by the side of the shape, mm on the sheet. Round numbers have no standard;
 * common practice, no source.
 */
const brushes = [
  { sideMm: 200, name: 'a large flat (40 to 50 mm) or a mop' },
  { sideMm: 100, name: 'a flat (20 to 25 mm) or a mop' },
  { sideMm: 45, name: 'a mop or a round 12' },
  { sideMm: 18, name: 'a round 12' },
  { sideMm: 7, name: 'a round 8' },
  { sideMm: 3, name: 'a round 6' },
  { sideMm: 0, name: 'a rigger' },
] as const;

/** From so many small shapes on a second brush is worth taking up (own). */
const manySmall = 10;

const brushOf = (sideMm: number): string =>
  (brushes.find((one) => sideMm >= one.sideMm) ?? brushes[brushes.length - 1])?.name ?? '';

/** For a wash: by its largest shape, the first by all it covers; later a smaller one for many small shapes. */
function washBrush(facts: PlanFacts, draft: StepDraft): string {
  const own = draft.slots.flatMap((i) => facts.slots[i] ?? []);
  const largest = own.reduce((most, slot) => Math.max(most, slot.largestMm2), 0);
  const small = own.reduce((sum, slot) => sum + slot.smallShapes, 0);
  const first = washInHand(facts, draft)?.wash === 1;
  const sideMm = Math.sqrt(first ? 100 * areaCm2(facts, draft.slots) : largest);
  if (draft.technique === 'dry brush') return 'an old flat or a round 8';
  const main = brushOf(sideMm);
  const second =
    !first && small >= manySmall && sideMm >= 7 ? '; a round 6 for the small shapes' : '';
  const damp = draft.soften === '' ? '' : '; a clean damp brush for the edges';
  return `${main}${second}${damp}`;
}

/** The brushes of a step, in words with '; ' between them; null where none is needed. */
function brushFor(facts: PlanFacts, draft: StepDraft): string | null {
  switch (draft.kind) {
    case 'wash':
      return washBrush(facts, draft);
    case 'mask':
      return 'an old small brush drawn over soap first';
    case 'lift':
      return 'a clean round 8';
    case 'splatter':
      return draft.technique === 'splatter' ? 'an old round 8' : 'a rigger';
    case 'details':
    case 'accents':
      return 'a round 6; a rigger for lines';
    case 'last-lights':
      return draft.technique === 'scraping' ? null : 'a round 2 or a rigger';
    default:
      return null;
  }
}

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
    return runsAsBead(plannedMixes(facts).filter(({ id }) => draft.mixes.includes(id)))
      ? `tilted about ${tilts.bead}°, so that a bead gathers and runs down with you`
      : 'flat: paint so thick does not run';
  }
  return `tilted about ${tilts.later}°, so that each stroke gathers at its lower edge`;
}

/** How the board lies, in words; null where it does not matter. */
function boardFor(facts: PlanFacts, draft: StepDraft): string | null {
  switch (draft.kind) {
    case 'wash':
      return washBoard(facts, draft);
    case 'splatter':
      return draft.technique === 'splatter' ? 'flat: drops run on a slope' : 'flat';
    case 'lift':
    case 'details':
    case 'accents':
    case 'last-lights':
      return 'flat';
    default:
      return null;
  }
}

/** In the order they are done: with the stroke, while it shines, as the shine goes, damp; dry brush last (R4). */
const detectors: readonly TechniqueDetector[] = [
  gradedWash,
  negativePainting,
  merging,
  charging,
  waterDrops,
  dampLifting,
  dryBrush,
];

/** More than these nobody keeps in mind in one step. */
export const mostSmallTechniques = 3;

/** A wash, or each area of one that is painted in two ways, as a draft of its own. */
const partsOf = ({ areas, ...draft }: StepDraft): StepDraft[] =>
  areas?.map(({ slots, technique, paper }) => ({ ...draft, slots, technique, paper })) ?? [draft];

/**
 * The smaller techniques the reading calls for in a step, at most three: those she has decided, then those about
 * most of the sheet, in the order they are done. Empty for a plain picture.
 */
function proposeTechniques(facts: PlanFacts, draft: StepDraft): SmallTechnique[] {
  if (draft.kind === 'last-lights') {
    const lights = plannedWhites(facts)?.last ?? [];
    return scraping(facts, draft, lights.length);
  }
  const proposals = partsOf(draft).flatMap((part) => {
    const wash = washInHand(facts, part);
    return wash ? detectors.flatMap((detect) => detect(wash) ?? []) : [];
  });
  const inOrder = proposals.toSorted(
    (one, other) =>
      Number(other.hers ?? false) - Number(one.hers ?? false) || other.share - one.share,
  );
  const nameOf = ({ smallTechnique }: TechniqueProposal): string => smallTechnique.technique;
  const kept = new Set(
    inOrder
      .filter((one, n) => inOrder.findIndex((other) => nameOf(other) === nameOf(one)) === n)
      .slice(0, mostSmallTechniques),
  );
  return proposals.filter((one) => kept.has(one)).map(({ smallTechnique }) => smallTechnique);
}

/** A draft with how it is done: the smaller techniques, the brush, how the board lies. */
export function withHandling(facts: PlanFacts, draft: StepDraft): StepDraft {
  const techniques = proposeTechniques(facts, draft);
  const tools = partsOf(draft).map((part) => ({
    brush: brushFor(facts, part),
    board: boardFor(facts, part),
  }));
  const brush = [...new Set(tools.flatMap((one) => one.brush?.split('; ') ?? []))].join('; ');
  const largest = tools[draft.technique === 'wet-in-wet' ? 0 : tools.length - 1];
  const rules = new Set(draft.rules);
  if (techniques.some(({ technique }) => technique === 'negative painting')) rules.add('R20');
  if (techniques.some(({ technique }) => technique === 'water drops')) rules.add('R13').add('R21');
  if (techniques.some(({ technique }) => technique === 'lifting')) rules.add('R11');
  if (techniques.some(({ technique }) => technique === 'charging')) rules.add('R6');
  // Begun at its strong side, a graded wash does not go from top to bottom of itself.
  const graded = techniques.some(({ technique }) => technique === 'graded wash');
  return {
    ...draft,
    ...(graded && { prompt: draft.prompt.replace(', top to bottom.', '.') }),
    ...(techniques.length > 0 && { touches: techniques }),
    ...(brush && { brush }),
    ...(largest.board && { board: largest.board }),
    ...(draft.areas && {
      areas: draft.areas.map((area, n) => ({
        ...area,
        ...(tools[n].brush && { brush: tools[n].brush }),
        ...(tools[n].board && { board: tools[n].board }),
      })),
    }),
    rules: [...rules],
  };
}
