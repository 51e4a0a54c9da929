import { expect, it } from 'vitest';
import type { Decision } from '../../../../app/core/decisions/painting.ts';
import type { PlanEdit } from '../../../../app/core/decisions/plan-edit.ts';
import { standingPlanEdits } from '../../../../app/core/decisions/standing-decisions.ts';

const edit = (key: string): PlanEdit => ({ kind: 'split', key });
const decided = (...what: (PlanEdit | null | { undoes: string })[]): Decision[] =>
  what.map((one, n) =>
    one && 'undoes' in one
      ? { id: `d${n}`, at: n, kind: 'undo', undoes: one.undoes }
      : { id: `d${n}`, at: n, kind: 'plan-edit', edit: one },
  );

it('those since all were dropped count; a drop taken back drops nothing', () => {
  const [a, b, c] = [edit('a'), edit('b'), edit('c')];
  expect(standingPlanEdits(decided(a, b))).toEqual([a, b]);
  expect(standingPlanEdits(decided(a, { undoes: 'd0' }, b))).toEqual([b]);
  expect(standingPlanEdits(decided(a, null, b, c))).toEqual([b, c]);
  expect(standingPlanEdits(decided(a, null, { undoes: 'd1' }, b))).toEqual([a, b]);
  expect(standingPlanEdits([])).toEqual([]);
});
