import type { Technique } from '../../../app/model/technique.ts';
import { waterKindOf } from '../../../app/model/water-kind.ts';
import { dryingMinutes } from './drying-minutes.ts';
import { paintMinutes } from './paint-minutes.ts';
import type { SolvedWash } from './plan-facts.ts';
import { areaCm2, type PlanFacts, passagePrefix, shapeCount, usedMixes } from './plan-facts.ts';
import { softenWhere } from './soften-where.ts';
import type { StepDraft } from './step-draft.ts';
import { edgesInWords, lightsInWords, washPrompt, washTitle } from './wash-words.ts';

/** Big brush first, small brush last (own estimate). */
const paces = [
  { cm2PerMinute: 160, secondsPerShape: 1 },
  { cm2PerMinute: 80, secondsPerShape: 2 },
  { cm2PerMinute: 50, secondsPerShape: 4 },
] as const;

function rulesOf(technique: Technique, wash: number): string[] {
  const always = ['R2', 'R3', 'R7', 'R8', 'R9'];
  if (technique === 'wet-in-wet') return [...always, 'R6', wash > 1 ? 'R16' : 'R5'];
  return wash > 1 ? [...always, 'R5'] : always;
}

/** One wash of one passage: all that R15 asks for, brush and board apart (`withHandling`). */
export function washStep(
  facts: PlanFacts,
  passage: string,
  wash: SolvedWash,
  count: number,
  technique: Technique,
): StepDraft {
  const last = wash.wash === count;
  const painted = wash.mixes.filter((mix) => mix.parts.length > 0);
  const key = `wash/${passage}/${wash.wash}`;
  const water = waterKindOf({ key, kind: 'wash', technique }) ?? 'wash';
  const pace = paces[Math.min(wash.wash, paces.length) - 1] ?? paces[2];
  const wet = technique === 'wet-in-wet';
  const soften = softenWhere(facts, wash.slots, wet);
  return {
    key,
    kind: 'wash',
    title: `${passagePrefix(facts, passage)}${washTitle(wash.wash, count, technique)}`,
    prompt: washPrompt(facts, passage, wash, technique, last),
    watch: [
      wet
        ? 'Once the shine has gone nothing wetter goes in: leave it alone.'
        : 'Once the shine goes, leave it alone until it is dry.',
      soften === '' ? edgesInWords(wet) : '',
      wash.wash === 1 ? lightsInWords(facts, passage) : '',
    ]
      .filter(Boolean)
      .join(' '),
    bands: [...wash.weak, ...wash.full],
    families: painted.map((mix) => mix.family),
    slots: wash.slots,
    mixes: usedMixes(wash.mixes),
    paper: wet ? 'shiny' : 'bone dry',
    technique,
    soften,
    paintMinutes: paintMinutes(areaCm2(facts, wash.slots), shapeCount(facts, wash.slots), pace),
    ...dryingMinutes(facts, water),
    cautions: [],
    rules: rulesOf(technique, wash.wash),
  };
}
