import type { PlanEdit } from '../../../../app/model/plan-edit.ts';
import { dryKeyOf } from '../dry-step.ts';
import type { PlanFacts } from '../plan-facts.ts';
import type { PlanWork, WashWork } from '../plan-work.ts';
import { addedWork } from './added-work.ts';
import { mergeWashes } from './merge-washes.ts';
import { splitWash } from './split-wash.ts';
import { techniqueOfWork } from './technique-of-work.ts';

export interface EditedWork {
  readonly work: readonly PlanWork[];
  /** Keys she left out, of steps that may be there or not. */
  readonly leftOut: ReadonlySet<string>;
}

/** Where the step with that key stands; a drying check stands with the step it waits for. */
const placeOf = (work: readonly PlanWork[], key: string): number =>
  work.findIndex((one) => one.key === key || dryKeyOf(one.key) === key);

/** The work with others in the place of one. */
const inPlaceOf = (work: readonly PlanWork[], at: number, ...others: readonly PlanWork[]) => [
  ...work.slice(0, at),
  ...others,
  ...work.slice(at + 1),
];

/** Put right after the step with key `after`, or at the very start; unchanged where it is not there. */
function putAfter(work: readonly PlanWork[], one: PlanWork, after: string | null) {
  const place = after === null ? -1 : placeOf(work, after);
  if (after !== null && place < 0) return null;
  return [...work.slice(0, place + 1), one, ...work.slice(place + 1)];
}

function nextOfPassage(
  { work, leftOut }: EditedWork,
  at: number,
  { passage }: WashWork,
): WashWork | undefined {
  return work
    .slice(at + 1)
    .find(
      (one): one is WashWork =>
        one.kind === 'wash' && one.passage === passage && !leftOut.has(one.key),
    );
}

function edited(facts: PlanFacts, now: EditedWork, edit: PlanEdit): readonly PlanWork[] | null {
  const { work } = now;
  if (edit.kind === 'skip' || edit.kind === 'mix') return null;
  if (edit.kind === 'add') {
    const one = addedWork(facts, edit);
    if (!one || work.some(({ key }) => key === one.key)) return null;
    return putAfter(work, one, edit.after);
  }
  const at = work.findIndex(({ key }) => key === edit.key);
  const one = work[at];
  if (!one) return null;
  if (edit.kind === 'move') return putAfter(inPlaceOf(work, at), one, edit.after);
  if (edit.kind === 'technique') {
    return inPlaceOf(work, at, techniqueOfWork(one, edit.technique));
  }
  if (one.kind !== 'wash' || now.leftOut.has(one.key)) return null;
  if (edit.kind === 'split') {
    const goes = splitWash(one, facts.slots);
    const isNew = !work.some(({ key }) => key === goes?.[1].key);
    return goes && isNew ? inPlaceOf(work, at, ...goes) : null;
  }
  const next = nextOfPassage(now, at, one);
  return next
    ? inPlaceOf(work, at, mergeWashes(one, next)).filter((other) => other !== next)
    : null;
}

/**
 * Her changes of the steps, one after the other; changes of mixes are in `facts` already. One that names
 * what is not there does nothing, and counts again when it is back.
 */
export function applyEdits(
  facts: PlanFacts,
  planned: readonly PlanWork[],
  edits: readonly PlanEdit[],
): EditedWork {
  let now: EditedWork = { work: planned, leftOut: new Set() };
  for (const edit of edits) {
    if (edit.kind === 'skip') {
      const others = [...now.leftOut].filter((key) => key !== edit.key);
      now = { ...now, leftOut: new Set(edit.skipped ? [...others, edit.key] : others) };
      continue;
    }
    now = { ...now, work: edited(facts, now, edit) ?? now.work };
  }
  return now;
}
