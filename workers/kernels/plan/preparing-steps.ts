import type { Paint } from '../../../app/model/paint.ts';
import { paintMinutes } from './paint-minutes.ts';
import { areaCm2, type PlanFacts, paintsIn, shapeCount, usedMixes } from './plan-facts.ts';
import { minutesOnSheet, sheetPace } from './sheet-pace.ts';
import { quietStep, type StepDraft } from './step-draft.ts';

const everySlot = ({ slots }: PlanFacts): number[] => [...slots.keys()];

/** Sheet, water and brushes; how the sheet is held is filled in once all steps stand (`preparedSteps`). */
export const prepareStep = (facts: PlanFacts): StepDraft => ({
  ...quietStep,
  key: 'prepare/sheet/0',
  kind: 'prepare',
  title: 'Prepare',
  prompt: 'Fix the sheet to a board and set out two jars of water.',
  paintMinutes: minutesOnSheet(facts, [3, 8]),
});

/** 'cadmium yellow contains cadmium: ...'; a caution of her own stands as she wrote it. */
function cautionsOf(paints: readonly Paint[]): string[] {
  return paints.flatMap(({ name, properties: { caution } }) => {
    if (!caution) return [];
    const [, contained] = /^Contains (.*)$/s.exec(caution) ?? [];
    return [contained ? `${name} contains ${contained}` : `${name}: ${caution}`];
  });
}

/** Mix what the first wash needs, and more than it needs, and test it. */
export function puddlesStep(facts: PlanFacts): StepDraft {
  const mixes = facts.passages.flatMap((passage) => passage.washes[0]?.mixes ?? []);
  const all = facts.passages.flatMap((passage) => passage.washes.flatMap((wash) => wash.mixes));
  const puddles = new Set(mixes.flatMap((mix) => mix.puddle ?? []));
  return {
    ...quietStep,
    key: 'puddles/sheet/1',
    kind: 'puddles',
    title: puddles.size === 1 ? 'Mix the puddle' : 'Mix the puddles',
    prompt: `Mix more than enough for the first wash. Brush ${puddles.size === 1 ? 'it' : 'each'} on a scrap, let it dry, hold it beside the swatch.`,
    watch: 'Wet paint looks darker than it dries: judge it dry.',
    mixes: usedMixes(mixes),
    families: mixes.filter((mix) => mix.parts.length > 0).map((mix) => mix.family),
    paintMinutes: minutesOnSheet(facts, [3 + puddles.size, 6 + 3 * puddles.size]),
    cautions: cautionsOf(paintsIn(facts, all)),
    rules: ['R15'],
  };
}

/** Outlines of the big shapes: on a quarter sheet she draws up to 60 of them, on a smaller one fewer. */
export function transferStep(facts: PlanFacts): StepDraft {
  const slots = everySlot(facts);
  return {
    ...quietStep,
    key: 'transfer/sheet/0',
    kind: 'transfer',
    title: 'Transfer the drawing',
    prompt:
      'Draw only the outlines of the big shapes and the whites to keep, lightly, with an H pencil.',
    watch: 'No scrubbing with the rubber: it roughens the paper.',
    slots,
    paintMinutes: paintMinutes(
      areaCm2(facts, slots) / 4,
      Math.min(60 * sheetPace(facts), shapeCount(facts, slots)),
      {
        cm2PerMinute: 40,
        secondsPerShape: 8,
      },
    ),
    rules: ['R3'],
  };
}
