import type { PlanEdit } from '../../decisions/plan-edit.ts';
import { consistencyOf, type Part } from '../../paint/mix.ts';
import type { Mix } from '../plan.ts';
import { type PlanFacts, rowsOf } from '../plan-facts.ts';

type Mixed = Extract<PlanEdit, { kind: 'mix' }>;

/** Beyond this nothing is paint any more. */
const mostLoad = 64;

const partsKey = (parts: readonly Part[]): string =>
  parts.map(({ paint, parts: count }) => `${paint} ${count}`).join(' + ');

/** A mix can be made: of paints of this palette, in whole parts, with some paint in it. */
function canBeMixed({ paints }: PlanFacts, { parts, load }: Mixed): boolean {
  const known = new Set(paints.map(({ id }) => id));
  return (
    parts.length > 0 &&
    parts.every(
      (part) => known.has(part.paint) && Number.isInteger(part.parts) && part.parts > 0,
    ) &&
    load > 0 &&
    load <= mostLoad
  );
}

/** The name of its puddle: that of one of the same parts, its own where it is alone, else a new one. */
function puddleOf(row: Mix, parts: readonly Part[], rows: readonly Mix[]): string {
  const others = rows.filter(({ id, puddle }) => id !== row.id && puddle !== null);
  const same = others.find((other) => partsKey(other.parts) === partsKey(parts));
  if (same?.puddle) return same.puddle;
  const taken = new Set(others.map(({ puddle }) => puddle));
  if (row.puddle && !taken.has(row.puddle)) return row.puddle;
  const free = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'].find((letter) => !taken.has(letter));
  return free ?? `Z${rows.length}`;
}

function mixedAnew(row: Mix, { parts, load }: Mixed, rows: readonly Mix[]): Mix {
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

/** The facts with rows mixed as she wants them; changes of rows that are not there wait. */
export function applyMixEdits(facts: PlanFacts, edits: readonly PlanEdit[]): PlanFacts {
  let rows = rowsOf(facts);
  let changed = false;
  for (const edit of edits) {
    if (edit.kind !== 'mix' || !canBeMixed(facts, edit)) continue;
    const row = rows.find(({ id, parts }) => id === edit.mix && parts.length > 0);
    if (!row) continue;
    changed = true;
    const anew = mixedAnew(row, edit, rows);
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
