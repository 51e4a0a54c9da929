import { expect, it } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { colourOfWashes, defaultPaperLab } from '../../../../../app/core/paint/colour-of-washes.ts';
import { orderSteps } from '../../../../../app/core/plan/order-steps.ts';
import { type PlanFacts, plannedMixes } from '../../../../../app/core/plan/plan-facts.ts';
import {
  applyStepsToSheet,
  placedRows,
  updateLaidColours,
} from '../../../../../app/core/plan/steps/apply-steps-to-sheet.ts';
import { madeReading, tableOf } from '../../../../support/plan/made-reading.ts';
import { paintsNamed, solvedFacts } from '../../../../support/plan/solved-facts.ts';

const paints = paintsNamed('py74-arylide-yellow', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna');
const table = (count: number, passage: string) =>
  tableOf(
    Array.from({ length: count }, (_, i) => 97 - (i * 70) / (count - 1)),
    [
      [-10, 20],
      [2, -18],
    ],
  ).map((slot) => ({ ...slot, share: slot.share / 2, passage }));

/** What the solver says of the sheet after every wash of a passage. */
function asSolved({ passages, slots }: PlanFacts): Map<string, readonly Lab[]> {
  let sheet: readonly Lab[] = slots.map(() => defaultPaperLab);
  const found = new Map<string, readonly Lab[]>();
  for (const { passage, washes } of passages) {
    for (const wash of washes) {
      const next = [...sheet];
      for (const [n, slot] of wash.slots.entries()) next[slot] = wash.after[n] as Lab;
      sheet = next;
      found.set(`wash/${passage}/${wash.wash}`, sheet);
    }
  }
  return found;
}

// Five bands in two washes: some share a wash at two strengths.
it.each([
  [4, 3],
  [5, 2],
  [3, 1],
])('%i bands in %i washes look as the layered solve says', async (bands, washes) => {
  const reading = madeReading([...table(bands, 'ground'), ...table(bands, 'subject')]);
  const facts = await solvedFacts(reading, paints, washes);
  const solved = asSolved(facts);
  const steps = orderSteps(facts).filter(({ kind }) => kind === 'wash');
  expect(steps).toHaveLength(solved.size);
  for (const step of steps) {
    for (const [i, lab] of (solved.get(step.key) ?? []).entries()) {
      for (const k of [0, 1, 2]) expect(step.after[i]?.[k]).toBeCloseTo(lab[k] as number, 6);
    }
  }
  const laid = applyStepsToSheet(steps, placedRows(facts), facts.slots, paints, defaultPaperLab);
  for (const [n, row] of updateLaidColours(plannedMixes(facts), laid.rows).entries()) {
    const before = plannedMixes(facts)[n];
    for (const k of [0, 1, 2]) {
      expect(row.expected[k]).toBeCloseTo(before?.expected[k] as number, 6);
      expect(row.expectedWet[k]).toBeCloseTo(before?.expectedWet[k] as number, 6);
      if (before?.weaker) {
        expect(row.weaker?.expected[k]).toBeCloseTo(before.weaker.expected[k] as number, 6);
      }
    }
  }
});

it('lays paint in the order of the steps, and dry brush on the tops of the paper only', async () => {
  const facts = await solvedFacts(madeReading(table(4, 'sheet')), paints);
  const rows = plannedMixes(facts).filter(({ family, parts }) => family === 1 && parts.length > 0);
  const [first, second] = rows;
  if (!first || !second) throw new Error('no rows');
  const dark = facts.slots.findIndex(({ family, band }) => family === 1 && band === 4);
  const step = (id: string, technique: 'wet on dry' | 'dry brush' = 'wet on dry') => ({
    kind: 'wash' as const,
    slots: [dark],
    mixes: [id],
    technique,
  });
  const lay = (...steps: ReturnType<typeof step>[]) =>
    applyStepsToSheet(steps, placedRows(facts), facts.slots, paints, defaultPaperLab).after.at(
      -1,
    )?.[dark] as Lab;
  const wash = ({ parts, load }: (typeof rows)[number]) => ({
    paints: paintsNamed(...parts.map(({ paint }) => paint)),
    parts: parts.map((part) => part.parts),
    load,
  });
  // An independent sum of the same two layers, the other way round.
  const other = colourOfWashes([wash(second), wash(first)]);
  const turned = lay(step(second.id), step(first.id));
  for (const k of [0, 1, 2]) expect(turned[k]).toBeCloseTo(other[k] as number, 6);
  const whole = lay(step(first.id));
  const brushed = lay(step(first.id, 'dry brush'));
  expect(brushed[0]).toBeGreaterThan(whole[0] + 1);
  expect(brushed[0]).toBeLessThan(defaultPaperLab[0] - 1);
});

it('60 slots and 20 steps: each step is laid on what the steps before it leave, whatever comes after', async () => {
  const families = Array.from(
    { length: 6 },
    (_, i) => [25 * Math.cos(i), 25 * Math.sin(i)] as const,
  );
  const bands = Array.from({ length: 7 }, (_, i) => 95 - 11 * i);
  const facts = await solvedFacts(madeReading(tableOf(bands, families)), paints);
  const steps = orderSteps(facts);
  const many = [...steps, ...steps].slice(0, 20);
  const laid = (count: number) =>
    applyStepsToSheet(many.slice(0, count), placedRows(facts), facts.slots, paints, defaultPaperLab)
      .after;
  const started = performance.now();
  const whole = laid(20);
  // Told, not tested: machines differ. 20 ms are asked for.
  console.info(`60 slots and 20 steps laid in ${Math.round(performance.now() - started)} ms`);
  expect(whole.map((labs) => labs.length)).toEqual(Array(20).fill(facts.slots.length));
  expect(whole.flat(2).every(Number.isFinite)).toBe(true);
  for (const count of [1, 7, 13]) expect(laid(count)).toEqual(whole.slice(0, count));
});
