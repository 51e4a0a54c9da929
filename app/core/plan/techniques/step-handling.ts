import type { BoardSaid, BrushSaid } from '../../words/plan/tools.ts';
import type { Said } from '../../words/plan/words.ts';
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
  { sideMm: 200, say: 'brush/large-flat' },
  { sideMm: 100, say: 'brush/flat' },
  { sideMm: 45, say: 'brush/mop' },
  { sideMm: 18, say: 'brush/round-12' },
  { sideMm: 7, say: 'brush/round-8' },
  { sideMm: 3, say: 'brush/round-6' },
  { sideMm: 0, say: 'brush/rigger' },
] as const;

/** From so many small shapes on a second brush is worth taking up (own). */
const manySmall = 10;

const brushOf = (sideMm: number): BrushSaid => {
  const { say } = brushes.find((one) => sideMm >= one.sideMm) ?? brushes[brushes.length - 1];
  return { say };
};

/** For a wash: by its largest shape, the first by all it covers; later a smaller one for many small shapes. */
function washBrushes(facts: PlanFacts, draft: StepDraft): BrushSaid[] {
  const own = draft.slots.flatMap((i) => facts.slots[i] ?? []);
  const largest = own.reduce((most, slot) => Math.max(most, slot.largestMm2), 0);
  const small = own.reduce((sum, slot) => sum + slot.smallShapes, 0);
  const first = washInHand(facts, draft)?.wash === 1;
  const sideMm = Math.sqrt(first ? 100 * areaCm2(facts, draft.slots) : largest);
  if (draft.technique === 'dry brush') return [{ say: 'brush/dry' }];
  const brushes = [brushOf(sideMm)];
  if (!first && small >= manySmall && sideMm >= 7) brushes.push({ say: 'brush/small-shapes' });
  if (draft.soften.length > 0) brushes.push({ say: 'brush/edges' });
  return brushes;
}

/** The brushes of a step; none where none is needed. */
function brushesFor(facts: PlanFacts, draft: StepDraft): readonly BrushSaid[] {
  switch (draft.kind) {
    case 'wash':
      return washBrushes(facts, draft);
    case 'mask':
      return [{ say: 'brush/mask' }];
    case 'lift':
      return [{ say: 'brush/clean' }];
    case 'splatter':
      return [{ say: draft.technique === 'splatter' ? 'brush/old' : 'brush/rigger' }];
    case 'details':
    case 'accents':
      return [{ say: 'brush/round-6' }, { say: 'brush/lines' }];
    case 'last-lights':
      return draft.technique === 'scraping' ? [] : [{ say: 'brush/lights' }];
    default:
      return [];
  }
}

/** Degrees: common practice, no source. */
const tilts = { bead: 15, later: 10, graded: 20 } as const;

function washBoard(facts: PlanFacts, draft: StepDraft): BoardSaid {
  const wash = washInHand(facts, draft);
  const [grading] = wash ? gradingsOf(wash) : [];
  const graded = grading && { degrees: tilts.graded, raised: grading.strong };
  if (draft.technique === 'wet-in-wet') {
    return graded
      ? { say: 'board/flat-then-raised', ...graded }
      : { say: 'board/flat-colours-stay' };
  }
  if (graded) return { say: 'board/raised', ...graded };
  if (draft.technique === 'dry brush') return { say: 'board/flat' };
  if (wash?.wash === 1 || draft.technique === 'glaze') {
    return runsAsBead(plannedMixes(facts).filter(({ id }) => draft.mixes.includes(id)))
      ? { say: 'board/bead', degrees: tilts.bead }
      : { say: 'board/flat-thick' };
  }
  return { say: 'board/strokes', degrees: tilts.later };
}

/** How the board lies; null where it does not matter. */
function boardFor(facts: PlanFacts, draft: StepDraft): BoardSaid | null {
  switch (draft.kind) {
    case 'wash':
      return washBoard(facts, draft);
    case 'splatter':
      return { say: draft.technique === 'splatter' ? 'board/flat-drops' : 'board/flat' };
    case 'lift':
    case 'details':
    case 'accents':
    case 'last-lights':
      return { say: 'board/flat' };
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

/** Begun at its strong side, a graded wash does not go from top to bottom of itself. */
const withoutTop = (prompt: Said): Said =>
  prompt.say === 'wash/first-dry' ? { ...prompt, graded: true } : prompt;

/** A draft with how it is done: the smaller techniques, the brush, how the board lies. */
export function withHandling(facts: PlanFacts, draft: StepDraft): StepDraft {
  const techniques = proposeTechniques(facts, draft);
  const tools = partsOf(draft).map((part) => ({
    brush: brushesFor(facts, part),
    board: boardFor(facts, part),
  }));
  const used = new Set(tools.flatMap((one) => one.brush.map(({ say }) => say)));
  const brush = [...used].map((say): BrushSaid => ({ say }));
  const largest = tools[draft.technique === 'wet-in-wet' ? 0 : tools.length - 1];
  const rules = new Set(draft.rules);
  if (techniques.some(({ technique }) => technique === 'negative painting')) rules.add('R20');
  if (techniques.some(({ technique }) => technique === 'water drops')) rules.add('R13').add('R21');
  if (techniques.some(({ technique }) => technique === 'lifting')) rules.add('R11');
  if (techniques.some(({ technique }) => technique === 'charging')) rules.add('R6');
  const graded = techniques.some(({ technique }) => technique === 'graded wash');
  return {
    ...draft,
    ...(graded && { prompt: withoutTop(draft.prompt) }),
    ...(techniques.length > 0 && { touches: techniques }),
    ...(brush.length > 0 && { brush }),
    ...(largest.board && { board: largest.board }),
    ...(draft.areas && {
      areas: draft.areas.map((area, n) => ({
        ...area,
        ...(tools[n].brush.length > 0 && { brush: tools[n].brush }),
        ...(tools[n].board && { board: tools[n].board }),
      })),
    }),
    rules: [...rules],
  };
}
