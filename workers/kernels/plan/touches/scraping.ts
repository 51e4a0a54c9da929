import type { PaperChoice } from '../../../../app/model/drying/paper-choice.ts';
import type { Touch } from '../../../../app/model/touch.ts';
import type { StepDraft } from '../step-draft.ts';

/** Whites that come back last can be scraped out of cotton paper; soft paper tears (common practice, no source). */
export function scraping(
  { fibre }: PaperChoice,
  { technique }: StepDraft,
  lights: number,
): Touch[] {
  if (fibre !== 'cotton' || lights === 0 || technique === 'scraping') return [];
  return [
    {
      technique: 'scraping',
      text: 'On cotton paper a sharp blade, drawn flat and lightly, takes the paint off for a sparkle. The very last thing: nothing goes over it.',
      paper: 'bone dry',
      minutes: null,
    },
  ];
}
