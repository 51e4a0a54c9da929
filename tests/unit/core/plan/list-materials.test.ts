import { expect, test } from 'vitest';
import { listMaterials } from '../../../../app/core/plan/list-materials.ts';
import type { WashPlan } from '../../../../app/core/plan/plan.ts';

test('every paint that is mixed or met wet is laid out, by name and Colour Index name where it has one', () => {
  const plan = {
    palette: [
      { id: 'a', name: 'burnt sienna', ci: 'PBr7' },
      { id: 'b', name: 'sap green', ci: '' },
      { id: 'c', name: 'ultramarine blue', ci: 'PB29' },
    ],
    mixes: [
      { parts: [{ paint: 'b', parts: 1 }], meets: { parts: [{ paint: 'a', parts: 1 }] } },
      { parts: [] },
    ],
    steps: [{ kind: 'wash', brush: 'a round 8; a round 6 for the small shapes' }],
  } as unknown as WashPlan;
  const [paints, brushes] = listMaterials(plan);
  expect(paints).toEqual({ name: 'Paints', things: ['burnt sienna (PBr7)', 'sap green'] });
  expect(brushes).toEqual({ name: 'Brushes', things: ['a round 8', 'a round 6'] });
});
