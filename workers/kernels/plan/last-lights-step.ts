import { dryingMinutes } from './drying-minutes.ts';
import { paintMinutes } from './paint-minutes.ts';
import type { PlanFacts } from './plan-facts.ts';
import { allSmall, plannedWhites, slotsOfWhites, whitesInWords } from './planned-whites.ts';
import { quietStep, type StepDraft } from './step-draft.ts';

/**
 * The whites that are brought back when all else is done (R13), or null where there are none. The
 * expected sheet shows them as bare paper all along: what they are at the end.
 */
export function lastLightsStep(facts: PlanFacts): StepDraft | null {
  const lights = plannedWhites(facts)?.last ?? [];
  if (lights.length === 0) return null;
  const cotton = facts.paper.fibre === 'cotton';
  return {
    ...quietStep,
    key: 'last-lights/sheet/0',
    kind: 'last-lights',
    title: lights.length === 1 ? 'Last light' : 'Last lights',
    prompt: `Bring back ${whitesInWords(lights.length, allSmall(lights))}: a touch of opaque white with a small brush${cotton ? ', or a scrape with a blade' : ''}.`,
    watch: 'Only on a bone-dry sheet, and fewer than you want to.',
    slots: slotsOfWhites(lights),
    technique: 'opaque white',
    paintMinutes: paintMinutes(0, lights.length, { cm2PerMinute: 1, secondsPerShape: 8 }),
    ...dryingMinutes(facts, 'accents'),
    cautions: cotton
      ? [
          'A blade cuts: scrape away from the hand that holds the sheet.',
          'Never scrape paint with cadmium or cobalt in it: its dust must not be raised.',
        ]
      : ['No blade on this paper: it tears.'],
    rules: ['R13'],
  };
}
