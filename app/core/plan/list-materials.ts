import { type Besides, besidesNames } from '../words/plan/beside.ts';
import { plainBrushes } from '../words/plan/tools.ts';
import { nameWithCode } from './paint-name-in.ts';
import type { Step, WashPlan } from './plan.ts';
import { usesBlade } from './steps/step-cautions.ts';

/** What to lay out before she starts, under its heading. */
interface LaidOut {
  readonly name: string;
  readonly things: readonly string[];
}

const has = (steps: readonly Step[], kind: Step['kind']): boolean =>
  steps.some((step) => step.kind === kind);

/** For the techniques of the plan (common practice, no source). */
function besides(steps: readonly Step[]): Besides[] {
  const wet = steps.some(
    ({ technique, areas }) => technique === 'wet-in-wet' || areas !== undefined,
  );
  const all: readonly (readonly [Besides, boolean])[] = [
    ['tissue', true],
    ['scraps', true],
    ['sponge', wet],
    ['mask', has(steps, 'mask')],
    ['cover', steps.some(({ technique }) => technique === 'splatter')],
    ['white', has(steps, 'last-lights')],
    ['blade', steps.some(usesBlade)],
  ];
  return all.flatMap(([name, isNeeded]) => (isNeeded ? [name] : []));
}

/** Paints that some mix takes or meets, brushes of the steps, and what else the techniques ask for. */
export function listMaterials({ palette, mixes, steps }: WashPlan): LaidOut[] {
  const used = new Set(
    mixes.flatMap(({ parts, meets }) =>
      [...parts, ...(meets?.parts ?? [])].map(({ paint }) => paint),
    ),
  );
  const paints = palette.filter(({ id }) => used.has(id)).map(nameWithCode);
  const brushes = [...new Set(steps.flatMap(({ brush }) => plainBrushes(brush)))];
  return [
    { name: 'Paints', things: paints },
    { name: 'Brushes', things: brushes },
    { name: 'Also', things: besides(steps).map((one) => besidesNames[one]) },
  ].filter(({ things }) => things.length > 0);
}
