import { consequenceSentences } from './consequences.ts';
import { eveningSentences } from './evenings.ts';
import { mendSentences } from './mending.ts';
import { areaNames } from './names.ts';
import { cautionSentences, mixSentences } from './paints.ts';
import type { SaidBy } from './said.ts';
import { cueSentences, stepSentences } from './steps.ts';
import { techniqueSentences } from './techniques.ts';
import { titles } from './titles.ts';
import { boardSentences, brushNames } from './tools.ts';
import { warningSentences } from './warnings.ts';
import { washSentences } from './washes.ts';
import { washesWhySentences } from './washes-why.ts';

/** All that a plan can say: a code, and the figures of its sentence. */
export type Said =
  | SaidBy<typeof areaNames>
  | SaidBy<typeof titles>
  | SaidBy<typeof stepSentences>
  | SaidBy<typeof washSentences>
  | SaidBy<typeof techniqueSentences>
  | SaidBy<typeof brushNames>
  | SaidBy<typeof boardSentences>
  | SaidBy<typeof mixSentences>
  | SaidBy<typeof eveningSentences>
  | SaidBy<typeof washesWhySentences>
  | SaidBy<typeof consequenceSentences>
  | SaidBy<typeof mendSentences>
  | SaidBy<typeof cueSentences>
  | SaidBy<typeof cautionSentences>
  | SaidBy<typeof warningSentences>;

const sentences: Readonly<Record<Said['say'], (figures: never) => string>> = {
  ...areaNames,
  ...titles,
  ...stepSentences,
  ...washSentences,
  ...techniqueSentences,
  ...brushNames,
  ...boardSentences,
  ...mixSentences,
  ...eveningSentences,
  ...washesWhySentences,
  ...consequenceSentences,
  ...mendSentences,
  ...cueSentences,
  ...cautionSentences,
  ...warningSentences,
};

/** What a plan says, or the sentence itself as older plans (before plan-16) stored it. */
export type Sentence = Said | string;

/** One sentence after the other. */
export type Sentences = readonly Said[] | string;

const say = (said: Sentence): string =>
  typeof said === 'string' ? said : (sentences[said.say] as (figures: Said) => string)(said);

/** What is said, in words; several sentences with blanks between them, nothing where there is nothing to say. */
export function words(told: Sentence | readonly Sentence[] | undefined): string {
  if (told === undefined || typeof told === 'string') return told ?? '';
  return 'say' in told ? say(told) : told.map(say).join(' ');
}

/** Whether a sentence is this one; one of an older plan tells no code. */
export const isSaid = (told: Sentence, code: Said['say']): boolean =>
  typeof told !== 'string' && told.say === code;

/**
 * Whether something from outside, a row of a copy, can be said: a code of ours with figures that give a sentence. Its
 * figures are looked at by saying it, as a sentence is the only thing that is ever made of them.
 */
export function canBeSaid(value: unknown): value is Said {
  if (typeof value !== 'object' || value === null || !('say' in value)) return false;
  if (typeof value.say !== 'string' || !Object.hasOwn(sentences, value.say)) return false;
  try {
    const text = say(value as Said);
    return !/undefined|\bnull\b|\bnan\b|\[object/i.test(text);
  } catch {
    return false;
  }
}
