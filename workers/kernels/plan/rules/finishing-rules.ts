import { type BrokenRule, broken, type Check } from './broken-rule.ts';

/** R21: spots belong where the picture is broken up anyway. */
export const splatterInTexture: Check = ({ steps, slots }) =>
  steps.flatMap((step): BrokenRule[] => {
    if (step.kind !== 'splatter') return [];
    if (step.slots.every((i) => (slots[i]?.smallShapes ?? 0) >= 2)) return [];
    return [
      broken(
        'R21',
        step,
        `${step.key} in a plain area`,
        'Here the shapes are plain: spots on them look like an accident.',
      ),
    ];
  });

const paintsOn = new Set(['wash', 'lift', 'splatter', 'accents', 'mask', 'unmask']);

/** R13: opaque white and the blade come last. */
export const lightsLast: Check = ({ steps }) => {
  const at = steps.findIndex(({ kind }) => kind === 'last-lights');
  const lights = steps[at];
  if (!lights) return [];
  const blade = lights.cautions.some((text) => /blade/i.test(text));
  return [
    ...steps
      .slice(at + 1)
      .filter(({ kind }) => paintsOn.has(kind))
      .map((step) =>
        broken(
          'R13',
          step,
          `${step.key} after the last lights`,
          'The last lights stand already: this stains them or drags the white about.',
        ),
      ),
    ...(blade
      ? []
      : [
          broken(
            'R13',
            lights,
            'nothing said of the blade',
            'A blade cuts: scrape away from the hand.',
          ),
        ]),
  ];
};

/** R19: the last look comes when all is painted. */
export const lookLast: Check = ({ steps }) => {
  const at = steps.findIndex(({ kind }) => kind === 'last-look');
  const look = steps[at];
  const later = steps
    .slice(at + 1)
    .find(({ kind }) => paintsOn.has(kind) || kind === 'last-lights');
  if (!look || !later) return [];
  return [
    broken(
      'R19',
      look,
      `${later.key} after the last look`,
      'Painting goes on after this look: what comes then is judged by nobody.',
    ),
  ];
};
