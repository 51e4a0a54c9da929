import { expect, it } from 'vitest';
import { lastUndo } from '../../../../app/core/decisions/last-undo.ts';
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

it('what was taken back is brought back in turn, until something new is decided', () => {
  const [a, b, c] = [edit('a'), edit('b'), edit('c')];
  const twice = decided(a, b, { undoes: 'd1' }, { undoes: 'd0' });
  expect(standingPlanEdits(twice)).toEqual([]);
  expect(lastUndo(twice, 'plan-edit')?.id).toBe('d3');
  const redone = decided(a, b, { undoes: 'd1' }, { undoes: 'd0' }, { undoes: 'd3' });
  expect(standingPlanEdits(redone)).toEqual([a]);
  expect(lastUndo(redone, 'plan-edit')?.id).toBe('d2');
  const both = [...redone, ...decided(a, b, a, a, a, { undoes: 'd2' }).slice(5)];
  expect(standingPlanEdits(both)).toEqual([a, b]);
  expect(lastUndo(both, 'plan-edit')).toBeUndefined();
  const anew = decided(a, b, { undoes: 'd1' }, c);
  expect(standingPlanEdits(anew)).toEqual([a, c]);
  expect(lastUndo(anew, 'plan-edit')).toBeUndefined();
  expect(lastUndo(decided(a, b, { undoes: 'd1' }), 'edge')).toBeUndefined(); // of another kind
});
