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
function besides(steps: readonly Step[]): string[] {
  const wet = steps.some(({ technique, areas }) => technique === 'wet-in-wet' || areas);
  return [
    'tissue',
    'scraps of the same paper',
    ...(wet ? ['a sponge or wide soft brush for clean water'] : []),
    ...(has(steps, 'mask')
      ? ['masking fluid, an old brush, soap, a crepe rubber or a clean cloth']
      : []),
    ...(steps.some(({ technique }) => technique === 'splatter')
      ? ['paper to cover what stays clean']
      : []),
    ...(has(steps, 'last-lights') ? ['opaque white'] : []),
    ...(steps.some(usesBlade) ? ['a blade in its cover'] : []),
  ];
}

/** A brush by its name alone: what it is for is said at the step. */
const plainBrush = (brush: string): string => brush.replace(/ for the .*$/, '');

/** Paints that some mix takes or meets, brushes of the steps, and what else the techniques ask for. */
export function listMaterials({ palette, mixes, steps }: WashPlan): LaidOut[] {
  const used = new Set(
    mixes.flatMap(({ parts, meets }) =>
      [...parts, ...(meets?.parts ?? [])].map(({ paint }) => paint),
    ),
  );
  const paints = palette.filter(({ id }) => used.has(id)).map(nameWithCode);
  const brushes = [
    ...new Set(steps.flatMap(({ brush }) => brush?.split('; ').map(plainBrush) ?? [])),
  ];
  return [
    { name: 'Paints', things: paints },
    { name: 'Brushes', things: brushes },
    { name: 'Also', things: besides(steps) },
  ].filter(({ things }) => things.length > 0);
}
