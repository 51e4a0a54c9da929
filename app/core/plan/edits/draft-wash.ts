import type { Technique } from '../../decisions/plan-edit.ts';
import { longestPrompt } from '../../limits.ts';
import { joinWords } from '../../words/numbers.ts';
import { bandWord } from '../../words/reading-words.ts';
import { nameOfFamily, type PlanFacts } from '../plan-facts.ts';
import type { WashWork } from '../steps/draft-steps.ts';
import { addPassageWords, type PassageOrder } from '../steps/passage-order.ts';
import type { StepDraft } from '../steps/step-draft.ts';
import { washStep } from '../steps/wash-step.ts';

const longestTitle = 40;

/** What is painted, by colour; by no name where the names would be too long. */
function fitted(sentence: (shapes: string) => string, names: readonly string[]): string {
  const full = sentence(`${joinWords(names)} shapes`);
  return full.length <= longestPrompt ? full : sentence('marked shapes');
}

function goPrompt(technique: Technique, names: readonly string[]): string {
  if (technique === 'wet-in-wet') {
    return fitted(
      (shapes) =>
        `Wet only the ${shapes}. At an even sheen lay the colours in, up to their borders.`,
      names,
    );
  }
  if (technique === 'glaze') {
    return fitted((shapes) => `One thin pass over the ${shapes} only. Do not scrub.`, names);
  }
  return fitted(
    (shapes) => `Paint only the ${shapes} in one go, and stop at the border of the others.`,
    names,
  );
}

const onceMore = (technique: Technique, names: readonly string[]): string =>
  fitted(
    (shapes) =>
      technique === 'wet-in-wet'
        ? `Wet the ${shapes} gently once more. At an even sheen lay the same colour over them.`
        : `Lay the same colour once more over the ${shapes}: one pass, no scrubbing.`,
    names,
  );

const onceMoreTitle = (names: readonly string[]): string => {
  const title = `Once more: ${joinWords(names)}`;
  return title.length <= longestTitle ? title : 'Once more';
};

const inOneGo = (technique: Technique): string =>
  technique === 'wet-in-wet'
    ? 'Wet all these shapes. At an even sheen lay in the lighter colours, then at once the darker ones, thicker, where they belong.'
    : 'Paint the lighter shapes, and while they still shine the darker ones into them, thicker.';

const dryBrushed = (bands: readonly string[]): string =>
  fitted(
    (shapes) =>
      `Blot the loaded brush, hold it low and drag it over the ${shapes}: only the tops of the paper take paint.`,
    bands,
  );

/** Title and prompt of a changed wash; where nothing was changed, the draft's own. */
function words({ change, technique }: WashWork, draft: StepDraft, names: readonly string[]) {
  switch (change) {
    case undefined:
      return { title: draft.title, prompt: draft.prompt };
    case 'first go':
    case 'second go':
      return { title: `${draft.title}, ${change}`, prompt: goPrompt(technique, names) };
    case 'in one go':
      return { title: `${draft.title} and the next ${change}`, prompt: inOneGo(technique) };
    case 'once more':
      return { title: onceMoreTitle(names), prompt: onceMore(technique, names) };
    default:
      return change satisfies never;
  }
}

/** Words of a wash she changed; as planned, they stay as they are. */
function rewordChangedWash(facts: PlanFacts, work: WashWork, draft: StepDraft): StepDraft {
  const bands = [...new Set(draft.bands)].map((band) => bandWord(band, facts.reading.bands.length));
  const names = [...new Set(draft.families)].map((id) => nameOfFamily(facts, id));
  const reworded = { ...draft, key: work.key, ...words(work, draft, names) };
  if (work.technique !== 'dry brush') return reworded;
  return {
    ...reworded,
    prompt: dryBrushed(work.change ? names : bands),
    watch: 'Stop before the grain fills. Then leave it alone.',
  };
}

/** The step of a wash, as planned or as she changed it. */
export function draftWash(facts: PlanFacts, order: PassageOrder, work: WashWork): StepDraft {
  const passageIndex = order.passages.findIndex(({ passage }) => passage === work.passage);
  const washes = order.passages[passageIndex]?.washes ?? [];
  const n = washes.findIndex(({ wash }) => wash === work.wash.wash);
  const draft = washStep(facts, work, washes.length);
  return rewordChangedWash(facts, work, addPassageWords(facts, order, draft, passageIndex, n));
}
