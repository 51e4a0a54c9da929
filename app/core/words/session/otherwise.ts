import type { Range } from '../../colour/lab.ts';
import type { SessionRecord, StepRecord } from '../../session/session-record.ts';
import { wetnessShort } from '../drying/drying-words.ts';
import { measuredHours, measuredMinutes, minutesInWords } from '../minutes.ts';
import { remedyFor, troubleWords } from './trouble.ts';

/** One thing that went otherwise than planned. */
export interface Otherwise {
  readonly words: string;
  /** What was advised, or what was expected; empty where there is nothing to add. */
  readonly more: string;
}

/** How long a wash took to dry, where that lay outside what was expected. */
function dryingOf({ title, dryMinutes, reckonedDryMinutes }: StepRecord): Otherwise[] {
  if (dryMinutes === null || !reckonedDryMinutes) return [];
  const [low, high]: Range = reckonedDryMinutes;
  if (dryMinutes >= low && dryMinutes <= high) return [];
  return [
    {
      words: `${title}: bone dry in ${measuredMinutes(dryMinutes)}.`,
      more: `Expected: ${minutesInWords(reckonedDryMinutes)}.`,
    },
  ];
}

type Told = Pick<
  SessionRecord,
  | 'troubles'
  | 'notes'
  | 'practised'
  | 'steps'
  | 'changedMixes'
  | 'mixes'
  | 'finishedAt'
  | 'totalMinutes'
>;

/**
 * What went otherwise, for the page she keeps: troubles and what was advised, her notes, mixes she changed, washes that
 * dried faster or slower than expected, steps left out.
 */
export function wentOtherwise(record: Told): Otherwise[] {
  const { troubles, notes, practised, steps, changedMixes, mixes } = record;
  const { finishedAt, totalMinutes } = record;
  const titleOf = (key: string): string => steps.find((step) => step.key === key)?.title ?? '';
  const puddles = new Set(
    mixes.filter(({ id }) => changedMixes.includes(id)).map(({ puddle, id }) => puddle ?? id),
  );
  const left = finishedAt === null ? [] : steps.filter(({ done }) => !done);
  return [
    ...troubles.map(({ trouble, stepKey, atMinutes, wetness }) => ({
      words: `${troubleWords[trouble]}: ${titleOf(stepKey)}, after ${measuredHours(atMinutes)}, the sheet ${wetnessShort[wetness]}.`,
      more: remedyFor(trouble, wetness),
    })),
    ...notes.map(({ text, atMinutes }) => ({
      words: text,
      more:
        finishedAt !== null && atMinutes > totalMinutes
          ? 'Noted afterwards.'
          : `Noted after ${measuredHours(atMinutes)}.`,
    })),
    ...[...puddles].map((puddle) => ({
      words: `Puddle ${puddle} was mixed differently.`,
      more: '',
    })),
    ...steps.flatMap(dryingOf),
    ...practised.map((key) => ({ words: `Tried on a scrap: ${titleOf(key)}.`, more: '' })),
    ...left.map(({ title }) => ({ words: `Left out: ${title}.`, more: '' })),
  ];
}
