import type { Step } from '../wash-plan.ts';

type Cautious = Pick<Step, 'cautions' | 'mixes'>;

/** Common practice, no source. */
const lips =
  'Never point a brush with your lips, and do not drink from the painting table: read the label of every paint.';

const withLabel = (caution: string): string =>
  /mask/i.test(caution) && /fluid/i.test(caution) && !/label/i.test(caution)
    ? `${caution} Read the label.`
    : caution;

const cautionsOf = ({ cautions, mixes }: Cautious, isFirstPaint: boolean): string[] => [
  ...(mixes.length > 0 && isFirstPaint ? [lips] : []),
  ...cautions.map(withLabel),
];

/** What is said at a step: each caution once a session, at the first step it is due. */
export function cautionsDue(steps: readonly Cautious[], index: number): string[] {
  const step = steps[index];
  if (!step) return [];
  const before = steps.slice(0, index);
  const said = new Set(before.flatMap((each) => each.cautions.map(withLabel)));
  const isFirstPaint = !before.some(({ mixes }) => mixes.length > 0);
  return cautionsOf(step, isFirstPaint).filter((caution) => !said.has(caution));
}
