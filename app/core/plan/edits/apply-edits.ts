import type { PlanEdit, Technique } from '../../decisions/plan-edit.ts';
import { strongestLoad } from '../../limits.ts';
import { consistencyOf } from '../../paint/consistency.ts';
import { amountsIn } from '../../paint/former-amounts.ts';
import type { LaidMix, Part } from '../../paint/mix.ts';
import type { Said } from '../../words/plan/words.ts';
import type { Mix } from '../plan.ts';
import { type PlanFacts, paintsNotToScrape, plannedMixes } from '../plan-facts.ts';
import { otherWork, type PlanWork, type WashWork } from '../steps/draft-steps.ts';
import {
  accentsStep,
  darkestSlots,
  lastRows,
  liftStep,
  placesToLift,
  placesToSplatter,
  splatterStep,
} from '../steps/finishing-steps.ts';
import { dryKeyOf, dryStep, type StepDraft } from '../steps/step-draft.ts';
import { techniqueChoices } from './possible-edits.ts';
import { mergeWashes, partOfWash, splitWash } from './regroup-washes.ts';

type Added = Extract<PlanEdit, { kind: 'add' }>;

const painted = ({ slots }: PlanFacts): number[] =>
  [...slots.keys()].filter((i) => slots[i] && !slots[i]?.reserve && slots[i]?.share);

/** The work of laying a mix once more over all its slots; null where the plan has no such mix. */
function oneMoreLayer(facts: PlanFacts, id: string, mix: string | null): PlanWork | null {
  for (const { passage, washes } of facts.passages) {
    for (const wash of washes) {
      const row = wash.mixes.find((each) => each.id === mix && each.parts.length > 0);
      if (!row) continue;
      const own = wash.slots.filter((i) => facts.slots[i]?.family === row.family);
      return {
        kind: 'wash',
        key: `wash/${passage}/${wash.wash}/add-${id}`,
        passage,
        wash: partOfWash(wash, facts.slots, own),
        technique: 'glaze',
        change: 'once more',
      };
    }
  }
  return null;
}

/** The slots where lifting helps; where there are none, the lightest painted slots. */
function liftable(facts: PlanFacts): number[] {
  const places = placesToLift(facts);
  if (places.length > 0) return places;
  const all = painted(facts);
  const lightest = Math.min(...all.map((i) => facts.slots[i]?.band ?? 0));
  return all.filter((i) => facts.slots[i]?.band === lightest);
}

/** The slots where splatter suits; where there are none, the slots with the most small shapes. */
function splattered(facts: PlanFacts): number[] {
  const places = placesToSplatter(facts);
  if (places.length > 0) return places;
  const all = painted(facts);
  const most = Math.max(...all.map((i) => facts.slots[i]?.smallShapes ?? 0));
  return all.filter((i) => facts.slots[i]?.smallShapes === most);
}

function addedDraft(facts: PlanFacts, { what, after }: Added): StepDraft {
  switch (what) {
    case 'lift':
      return liftStep(facts, liftable(facts));
    case 'splatter':
      return splatterStep(facts, splattered(facts));
    case 'accents': {
      const slots = darkestSlots(facts);
      return accentsStep(facts, slots, lastRows(facts, slots));
    }
    default:
      return dryStep(facts, after ?? '');
  }
}

/** A step she puts in, or null where what it is made from is not there. */
function addedWork(facts: PlanFacts, edit: Added): PlanWork | null {
  if (edit.what === 'wash') return oneMoreLayer(facts, edit.id, edit.mix);
  return otherWork({ ...addedDraft(facts, edit), key: `${edit.what}/sheet/add-${edit.id}` });
}

const prompts: Partial<Record<Technique, Said>> = {
  'opaque white': { say: 'last-lights/white' },
  scraping: { say: 'last-lights/scrape' },
  'wet on dry': { say: 'accents/fluid' },
};

/** Work painted another way; unchanged where that makes no sense for it, or a caution of the paints forbids it. */
function techniqueOfWork(facts: PlanFacts, work: PlanWork, technique: Technique): PlanWork {
  if (technique === 'scraping' && paintsNotToScrape(facts).length > 0) return work;
  const kind = work.kind === 'wash' ? 'wash' : work.draft.kind;
  if (!techniqueChoices(kind).includes(technique)) return work;
  if (work.kind === 'wash') {
    const { areas: _, ...plain } = work;
    return { ...plain, technique };
  }
  const { draft } = work;
  if (draft.technique === technique) return work;
  return { ...work, draft: { ...draft, technique, prompt: prompts[technique] ?? draft.prompt } };
}

export interface EditedWork {
  readonly work: readonly PlanWork[];
  /** Keys of the steps she left out; some may not be in the plan. */
  readonly leftOut: ReadonlySet<string>;
}

/** Where the step with that key stands; a drying check stands with the step it waits for. */
const placeOf = (work: readonly PlanWork[], key: string): number =>
  work.findIndex((one) => one.key === key || dryKeyOf(one.key) === key);

/** The work with others in the place of one. */
const inPlaceOf = (work: readonly PlanWork[], index: number, ...others: readonly PlanWork[]) => [
  ...work.slice(0, index),
  ...others,
  ...work.slice(index + 1),
];

/** Put right after the step with key `after`, or at the very start; unchanged where it is not there. */
function putAfter(work: readonly PlanWork[], one: PlanWork, after: string | null) {
  const place = after === null ? -1 : placeOf(work, after);
  if (after !== null && place < 0) return null;
  return [...work.slice(0, place + 1), one, ...work.slice(place + 1)];
}

function nextOfPassage(
  { work, leftOut }: EditedWork,
  index: number,
  { passage }: WashWork,
): WashWork | undefined {
  return work
    .slice(index + 1)
    .find(
      (one): one is WashWork =>
        one.kind === 'wash' && one.passage === passage && !leftOut.has(one.key),
    );
}

function edited(facts: PlanFacts, current: EditedWork, edit: PlanEdit): readonly PlanWork[] | null {
  const { work } = current;
  if (edit.kind === 'skip' || edit.kind === 'mix') return null;
  if (edit.kind === 'add') {
    const one = addedWork(facts, edit);
    if (!one || work.some(({ key }) => key === one.key)) return null;
    return putAfter(work, one, edit.after);
  }
  const index = work.findIndex(({ key }) => key === edit.key);
  const one = work[index];
  if (!one) return null;
  if (edit.kind === 'move') return putAfter(inPlaceOf(work, index), one, edit.after);
  if (edit.kind === 'technique') {
    return inPlaceOf(work, index, techniqueOfWork(facts, one, edit.technique));
  }
  if (one.kind !== 'wash' || current.leftOut.has(one.key)) return null;
  if (edit.kind === 'split') {
    const goes = splitWash(one, facts.slots);
    const isNew = !work.some(({ key }) => key === goes?.[1].key);
    return goes && isNew ? inPlaceOf(work, index, ...goes) : null;
  }
  const next = nextOfPassage(current, index, one);
  return next
    ? inPlaceOf(work, index, mergeWashes(one, next)).filter((other) => other !== next)
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
  let current: EditedWork = { work: planned, leftOut: new Set() };
  for (const edit of edits) {
    if (edit.kind === 'skip') {
      const others = [...current.leftOut].filter((key) => key !== edit.key);
      current = { ...current, leftOut: new Set(edit.skipped ? [...others, edit.key] : others) };
      continue;
    }
    current = { ...current, work: edited(facts, current, edit) ?? current.work };
  }
  return current;
}

const partsKey = (parts: readonly Part[]): string =>
  parts.map(({ paint, parts: count }) => `${paint} ${count}`).join(' + ');

/** A mix can be made: of paints of this palette, in whole parts, with some paint in it. */
function canBeMixed({ paints }: PlanFacts, { parts, load }: LaidMix): boolean {
  const known = new Set(paints.map(({ id }) => id));
  return (
    parts.length > 0 &&
    parts.every(
      (part) => known.has(part.paint) && Number.isInteger(part.parts) && part.parts > 0,
    ) &&
    load > 0 &&
    load <= strongestLoad
  );
}

/** Names the puddle of a changed mix: as a puddle of the same parts, else its old name if unshared, else a new one. */
function puddleOf(row: Mix, parts: readonly Part[], rows: readonly Mix[]): string {
  const others = rows.filter(({ id, puddle }) => id !== row.id && puddle !== null);
  const same = others.find((other) => partsKey(other.parts) === partsKey(parts));
  if (same?.puddle) return same.puddle;
  const taken = new Set(others.map(({ puddle }) => puddle));
  if (row.puddle && !taken.has(row.puddle)) return row.puddle;
  const free = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].find((letter) => !taken.has(letter));
  return free ?? `Z${rows.length}`;
}

function mixedAnew(row: Mix, { parts, load }: LaidMix, rows: readonly Mix[]): Mix {
  const { weaker } = row;
  // The thinner strength is the same puddle with as much more water as before.
  const thin = weaker && weaker.load * (load / row.load);
  return {
    ...row,
    parts,
    load,
    consistency: consistencyOf(load),
    puddle: puddleOf(row, parts, rows),
    ...(weaker && thin && { weaker: { ...weaker, load: thin, consistency: consistencyOf(thin) } }),
  };
}

/** The facts with her changes applied to the mixes; changes of mixes this plan does not have are ignored. */
export function applyMixEdits(facts: PlanFacts, edits: readonly PlanEdit[]): PlanFacts {
  let rows = plannedMixes(facts);
  let changed = false;
  for (const edit of edits) {
    if (edit.kind !== 'mix') continue;
    const amounts = amountsIn('ml', edit, facts.paints);
    if (!amounts || !canBeMixed(facts, amounts)) continue;
    const row = rows.find(({ id, parts }) => id === edit.mix && parts.length > 0);
    if (!row) continue;
    changed = true;
    const anew = mixedAnew(row, amounts, rows);
    rows = rows.map((each) => (each === row ? anew : each));
  }
  if (!changed) return facts;
  const byId = new Map(rows.map((row) => [row.id, row]));
  return {
    ...facts,
    passages: facts.passages.map((passage) => ({
      ...passage,
      washes: passage.washes.map((wash) => ({
        ...wash,
        mixes: wash.mixes.map((mix) => byId.get(mix.id) ?? mix),
      })),
    })),
  };
}
