import type { Technique } from '../../decisions/plan-edit.ts';
import type { ColourName } from '../../words/plan/names.ts';
import type { Said } from '../../words/plan/words.ts';
import { nameOfFamily, type PlanFacts } from '../plan-facts.ts';
import type { WashWork } from '../steps/draft-steps.ts';
import { addPassageWords, type PassageOrder } from '../steps/passage-order.ts';
import type { StepDraft } from '../steps/step-draft.ts';
import { washStep } from '../steps/wash-step.ts';

/** The prompt of one of two goes. */
function goPrompt(technique: Technique, colours: readonly ColourName[]): Said {
  if (technique === 'wet-in-wet') return { say: 'wash/go-wet', colours };
  return { say: technique === 'glaze' ? 'wash/go-glaze' : 'wash/go-dry', colours };
}

/** Title and prompt of a changed wash; where nothing was changed, the draft's own. */
function changedWords(
  { change, technique }: WashWork,
  { title, prompt }: StepDraft,
  colours: readonly ColourName[],
): Pick<StepDraft, 'title' | 'prompt'> {
  const wet = technique === 'wet-in-wet';
  if (change === undefined) return { title, prompt };
  if (change === 'once more')
    return {
      title: { say: 'title/once-more', colours },
      prompt: { say: wet ? 'wash/once-more-wet' : 'wash/once-more', colours },
    };
  return {
    title: title.say === 'title/wash' ? { ...title, change } : title,
    prompt:
      change === 'in one go'
        ? { say: wet ? 'wash/in-one-go-wet' : 'wash/in-one-go' }
        : goPrompt(technique, colours),
  };
}

/** Words of a wash she changed; as planned, they stay as they are. */
function rewordChangedWash(facts: PlanFacts, work: WashWork, draft: StepDraft): StepDraft {
  const bands = [...new Set(draft.bands)];
  const colours = [...new Set(draft.families)].map((id) => nameOfFamily(facts, id));
  const reworded = { ...draft, key: work.key, ...changedWords(work, draft, colours) };
  if (work.technique !== 'dry brush') return reworded;
  return {
    ...reworded,
    prompt: work.change
      ? { say: 'wash/dry-brush', colours }
      : { say: 'wash/dry-brush-bands', bands, count: facts.reading.bands.length },
    watch: [{ say: 'watch/grain' }],
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
