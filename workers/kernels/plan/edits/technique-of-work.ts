import type { Technique } from '../../../../app/model/technique.ts';
import { techniqueChoices } from '../../../../app/model/technique-choices.ts';
import type { PlanWork } from '../plan-work.ts';

const prompts: Partial<Record<Technique, string>> = {
  'opaque white': 'Bring back the last whites with touches of opaque white and a small brush.',
  scraping:
    'Scrape the last whites out of the dry paint with a blade, lightly, on cotton paper only.',
  'wet on dry':
    'With the point of a small brush and fluid dark paint set the few darkest touches, most of them near the centre of interest.',
};

/** Work painted another way; unchanged where that makes no sense for it. */
export function techniqueOfWork(work: PlanWork, technique: Technique): PlanWork {
  const kind = work.kind === 'wash' ? 'wash' : work.draft.kind;
  if (!techniqueChoices(kind).includes(technique)) return work;
  if (work.kind === 'wash') return { ...work, technique };
  const { draft } = work;
  if (draft.technique === technique) return work;
  return { ...work, draft: { ...draft, technique, prompt: prompts[technique] ?? draft.prompt } };
}
