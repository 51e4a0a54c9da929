import type { Technique } from '../../decisions/plan-edit.ts';
import { placeOf } from '../../raster/size.ts';
import type { TitleSaid } from '../../words/plan/titles.ts';
import type { Said } from '../../words/plan/words.ts';
import { adviseOnEdges } from '../edges/edge-advice.ts';
import type { Mix } from '../plan.ts';
import {
  areaCm2,
  nameOfFamily,
  type PlanFacts,
  passageNamed,
  type SolvedWash,
  shapeCount,
  usedMixes,
} from '../plan-facts.ts';
import { nameOfArea, type PlannedArea } from '../techniques/wash-areas.ts';
import { waterKindOf } from '../water-kind.ts';
import type { WashWork } from './draft-steps.ts';
import { dryingMinutes, paintMinutes, type StepDraft } from './step-draft.ts';
import { allSmall, hasWhitesToLeave, plannedWhites, whitesIn } from './white-steps.ts';

const tooThick: ReadonlySet<Mix['consistency']> = new Set(['cream', 'butter']);

/** Whether all that is laid down is thin enough to run down a tilted board (`consistencySign`). */
export const runsAsBead = (mixes: readonly Pick<Mix, 'parts' | 'consistency'>[]): boolean =>
  mixes.every(({ parts, consistency }) => parts.length === 0 || !tooThick.has(consistency));

/** 'First wash', 'Second wash' or 'Second glaze', and 'Darks' for the last of several. */
const washTitle = (
  facts: PlanFacts,
  passage: string,
  wash: number,
  count: number,
  technique: Technique,
): TitleSaid => ({
  say: 'title/wash',
  wash,
  isDarks: wash === count && count > 1,
  isGlaze: technique === 'glaze',
  ...passageNamed(facts, passage),
});

/** What the first wash of a passage goes over: the sheet, or the passage up to the line. */
const firstArea = (facts: PlanFacts, passage: string) => ({
  ...(passage === 'ground' || passage === 'subject' ? ({ passage } as const) : {}),
  whites: hasWhitesToLeave(facts, passage),
});

const firstPrompt = (
  facts: PlanFacts,
  passage: string,
  wash: SolvedWash,
  technique: Technique,
): Said =>
  technique === 'wet-in-wet'
    ? { say: 'wash/first-wet', ...firstArea(facts, passage) }
    : {
        say: 'wash/first-dry',
        ...firstArea(facts, passage),
        graded: false,
        thinner: wash.weak.length > 0,
        bead: runsAsBead(wash.mixes),
      };

/** The shape a wash begins with, the largest it finishes: the ochre at the bottom; empty where that is not known. */
function beginningOf(facts: PlanFacts, { slots, weak, full }: SolvedWash) {
  const finished = slots.flatMap((i) => {
    const slot = facts.slots[i];
    return slot && [...weak, ...full].includes(slot.band) ? [slot] : [];
  });
  const [largest] = finished.toSorted((one, two) => two.share - one.share);
  if (!largest?.centre || finished.length < 2) return {};
  return {
    first: { colour: nameOfFamily(facts, largest.family), place: placeOf(largest.centre) },
  };
}

const namedAreas = (facts: PlanFacts, areas: readonly PlannedArea[]) =>
  areas.map(({ slots, technique }, n) => ({
    name:
      n === 0 ? nameOfArea(facts, slots, areas[1]?.slots ?? []) : ({ say: 'area/rest' } as const),
    slots,
    technique,
    paper: technique === 'wet-in-wet' ? ('shiny' as const) : ('bone dry' as const),
  }));

/** A wash in two ways: what is smooth on wetted paper, then the rest on dry paper. */
const twoWaysPrompt = (
  facts: PlanFacts,
  passage: string,
  { wash }: SolvedWash,
  [smooth]: ReturnType<typeof namedAreas>,
): Said => ({
  say: 'wash/two-ways',
  wash,
  smooth: smooth.name,
  whites: wash === 1 && hasWhitesToLeave(facts, passage),
});

/** The prompt of a wash: one or two sentences. */
function washPrompt(
  facts: PlanFacts,
  passage: string,
  wash: SolvedWash,
  technique: Technique,
  last: boolean,
): Said {
  if (wash.wash === 1) return firstPrompt(facts, passage, wash, technique);
  const later = {
    bands: [...wash.weak, ...wash.full],
    count: facts.reading.bands.length,
    ...beginningOf(facts, wash),
  };
  if (technique === 'wet-in-wet') return { say: 'wash/later-wet', ...later };
  if (last) return { say: 'wash/last', ...later };
  return { say: technique === 'glaze' ? 'wash/glaze' : 'wash/later', ...later };
}

/** The whites a passage's first wash may paint over; nothing where there are none. */
function lightsPaintedOver(facts: PlanFacts, passage: string): Said[] {
  const lights = whitesIn(facts, passage, plannedWhites(facts)?.last ?? []);
  const { length } = lights;
  if (length === 0) return [];
  return [{ say: 'whites/painted-over', count: length, isSmall: allSmall(lights) }];
}

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
  { passage, wash, technique, areas }: Pick<WashWork, 'passage' | 'wash' | 'technique' | 'areas'>,
  count: number,
): StepDraft {
  const last = wash.wash === count;
  const named = areas && namedAreas(facts, areas);
  const painted = wash.mixes.filter((mix) => mix.parts.length > 0);
  const key = `wash/${passage}/${wash.wash}`;
  const water =
    waterKindOf({ key, kind: 'wash', technique, ...(named && { areas: named }) }) ?? 'wash';
  const pace = paces[Math.min(wash.wash, paces.length) - 1] ?? paces[2];
  const wet = technique === 'wet-in-wet';
  const soften = adviseOnEdges(facts, wash.slots, wet);
  return {
    key,
    kind: 'wash',
    title: washTitle(facts, passage, wash.wash, count, technique),
    prompt: named
      ? twoWaysPrompt(facts, passage, wash, named)
      : washPrompt(facts, passage, wash, technique, last),
    watch: [
      { say: wet ? 'watch/nothing-wetter' : 'watch/leave-it' },
      // Of edges none of which is softened something is said too (R15).
      ...(soften.length === 0
        ? [{ say: wet ? 'edges/run-soft' : 'edges/stay-crisp' } as const]
        : []),
      ...(wash.wash === 1 ? lightsPaintedOver(facts, passage) : []),
    ],
    bands: [...wash.weak, ...wash.full],
    families: painted.map((mix) => mix.family),
    slots: wash.slots,
    mixes: usedMixes(wash.mixes),
    paper: wet ? 'shiny' : 'bone dry',
    technique,
    ...(named && { areas: named }),
    soften,
    paintMinutes: paintMinutes(areaCm2(facts, wash.slots), shapeCount(facts, wash.slots), pace),
    ...dryingMinutes(facts, water),
    cautions: [],
    rules: rulesOf(technique, wash.wash),
  };
}
