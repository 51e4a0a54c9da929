import type { Technique } from '../../decisions/plan-edit.ts';
import { placeInWords } from '../../raster/size.ts';
import {
  capitalize,
  joinWords,
  openWithCount,
  pluralize,
  spellOrdinal,
} from '../../words/numbers.ts';
import { bandWord, passageWord } from '../../words/reading-words.ts';
import { adviseOnEdges } from '../edges/edge-advice.ts';
import type { Mix, WashArea } from '../plan.ts';
import {
  areaCm2,
  nameOfFamily,
  type PlanFacts,
  passagePrefix,
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
function washTitle(wash: number, count: number, technique: Technique): string {
  if (wash === count && count > 1) return 'Darks';
  const name = capitalize(spellOrdinal(wash));
  return technique === 'glaze' ? `${name} wash, a glaze` : `${name} wash`;
}

/** 'light', 'light and mid'. */
function bandsInWords({ reading }: PlanFacts, bands: readonly number[]): string {
  return joinWords(bands.map((band) => bandWord(band, reading.bands.length)));
}

const others: Record<string, string> = { ground: 'subject', subject: 'ground' };

/** What the first wash of a passage goes over: the sheet, or the passage up to the line. */
function areaInWords(facts: PlanFacts, passage: string, whole: string): string {
  const whites = hasWhitesToLeave(facts, passage);
  const other = others[passage];
  if (other === undefined) return whites ? `${whole} but the whites` : 'the sheet';
  return `the ${passageWord(passage)} up to the ${passageWord(other)}${whites ? ', but not the whites' : ''}`;
}

function firstPrompt(
  facts: PlanFacts,
  passage: string,
  wash: SolvedWash,
  technique: Technique,
): string {
  if (technique === 'wet-in-wet') {
    const all = `Wet ${areaInWords(facts, passage, 'everything')}`;
    return `${all}; at an even sheen lay in colour, thicker than on dry paper. Stop as the shine starts to go.`;
  }
  const area = areaInWords(facts, passage, 'the sheet').replace('the sheet', 'the whole sheet');
  const all = `Wash ${area}`;
  const thin = wash.weak.length > 0 ? ' Add water where it stays lightest.' : '';
  const how = runsAsBead(wash.mixes)
    ? 'Keep a bead running and do not go back in.'
    : 'Join stroke to wet stroke and do not go back in.';
  return `${all}, top to bottom.${thin} ${how}`;
}

/** Where a wash begins: ', the ochre at the bottom first', the largest shapes it finishes; empty where that is not known. */
function beginningInWords(facts: PlanFacts, { slots, weak, full }: SolvedWash): string {
  const finished = slots.flatMap((i) => {
    const slot = facts.slots[i];
    return slot && [...weak, ...full].includes(slot.band) ? [slot] : [];
  });
  const [largest] = finished.toSorted((one, two) => two.share - one.share);
  if (!largest?.centre || finished.length < 2) return '';
  return `, the ${nameOfFamily(facts, largest.family)} ${placeInWords(largest.centre)} first`;
}

const namedAreas = (facts: PlanFacts, areas: readonly PlannedArea[]): WashArea[] =>
  areas.map(({ slots, technique }, n) => ({
    name: n === 0 ? nameOfArea(facts, slots, areas[1]?.slots ?? []) : 'the rest',
    slots,
    technique,
    paper: technique === 'wet-in-wet' ? 'shiny' : 'bone dry',
  }));

/** A wash in two ways: what is smooth on wetted paper, then the rest on dry paper. */
function twoWaysPrompt(
  facts: PlanFacts,
  passage: string,
  { wash }: SolvedWash,
  [smooth]: readonly WashArea[],
): string {
  const wetted = wash === 1 ? `Wet only ${smooth.name}` : `Wet ${smooth.name} again, no scrubbing`;
  const rest =
    wash === 1 && hasWhitesToLeave(facts, passage) ? 'the rest but the whites' : 'the rest';
  return `${wetted}; at an even sheen lay in the colour. Then ${rest} on dry paper, a dry line between.`;
}

/** The prompt of a wash: one or two sentences. */
function washPrompt(
  facts: PlanFacts,
  passage: string,
  wash: SolvedWash,
  technique: Technique,
  last: boolean,
): string {
  if (wash.wash === 1) return firstPrompt(facts, passage, wash, technique);
  const bands = bandsInWords(facts, [...wash.weak, ...wash.full]);
  const first = beginningInWords(facts, wash);
  if (technique === 'wet-in-wet') {
    return `Wet the ${bands} shapes gently with a wide soft brush, no scrubbing. At an even sheen lay in thicker paint${first}.`;
  }
  if (last) {
    return `Paint the ${bands} shapes strong enough the first time${first || ', big ones before small'}. Then leave them alone.`;
  }
  if (technique === 'glaze') {
    return `One thin pass over the ${bands} shapes and all that is darker${first}. Do not scrub, do not go back.`;
  }
  return `Paint the ${bands} shapes and all that is darker in one go${first}; join shapes that touch.`;
}

/** Sentence on the edges of a wash none of which is softened (R15). */
const edgesInWords = (wet: boolean): string =>
  wet ? 'Its edges run soft by themselves.' : 'Its edges stay as the brush leaves them, crisp.';

/** Sentence on the whites a passage's first wash may paint over; empty where there are none. */
function lightsInWords(facts: PlanFacts, passage: string): string {
  const lights = whitesIn(facts, passage, plannedWhites(facts)?.last ?? []);
  const { length } = lights;
  if (length === 0) return '';
  const whites = openWithCount(length, allSmall(lights) ? 'small white' : 'white');
  return `${whites} may be painted over: ${pluralize(length, 'it comes', 'they come')} back at the end.`;
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
    title: `${passagePrefix(facts, passage)}${washTitle(wash.wash, count, technique)}`,
    prompt: named
      ? twoWaysPrompt(facts, passage, wash, named)
      : washPrompt(facts, passage, wash, technique, last),
    watch: [
      wet
        ? 'Once the shine has gone, add nothing wetter: leave it alone.'
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
    ...(named && { areas: named }),
    soften,
    paintMinutes: paintMinutes(areaCm2(facts, wash.slots), shapeCount(facts, wash.slots), pace),
    ...dryingMinutes(facts, water),
    cautions: [],
    rules: rulesOf(technique, wash.wash),
  };
}
