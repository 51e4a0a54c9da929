import { expect, test } from 'vitest';
import { usualPaper } from '../../../../app/core/drying/paper-choice.ts';
import { roomWeather } from '../../../../app/core/drying/weather.ts';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';
import { paletteEntries } from '../../../../app/core/plan/palette-entries.ts';
import type { Mix } from '../../../../app/core/plan/plan.ts';
import type { PlanFacts } from '../../../../app/core/plan/plan-facts.ts';
import type { Slot } from '../../../../app/core/reading/slot.ts';
import { words } from '../../../../app/core/words/plan/words.ts';
import { keptReading } from '../../../support/reading/kept-reading.ts';

const ids = ['py43-yellow-ochre', 'pb29-ultramarine-blue'];
const paints = ids.flatMap((id) => paintBox.filter((paint) => paint.id === id));
const families = [1, 2, 3].map((id) => ({
  id,
  lab: [50, 0, 0] as const,
  share: 0.3,
  name: `hue ${id}`,
}));

/** Three colours of ochre with those shares of the sheet in one wash, then a dark of the blue. */
function whyOf(shares: readonly number[]): string[] {
  const slots = [...shares, 0.01].map(
    (share, i): Slot => ({
      ...(keptReading.slots[0] as Slot),
      passage: 'sheet',
      family: (i % 3) + 1,
      share,
    }),
  );
  const mix = (family: number, paint = '') =>
    ({ family, passage: 'sheet', parts: [{ paint, parts: 1 }] }) as unknown as Mix;
  const light = [1, 2, 3].map((family) => mix(family, ids[0]));
  const wash = (mixes: Mix[], own: number[]) => ({ mixes, slots: own });
  const facts = {
    reading: { ...keptReading, families },
    slots,
    paints,
    weather: roomWeather,
    paper: usualPaper,
    passages: [{ passage: 'sheet', washes: [wash(light, [0, 1, 2]), wash([mix(1, ids[1])], [3])] }],
  };
  return paletteEntries(facts as unknown as PlanFacts).map(({ why }) => words(why));
}

test('a paint is for the colour that takes more than half of it, else for most mixes', () => {
  expect(whyOf([0.1, 0.5, 0.2])).toEqual(['the hue 2', 'the deepest darks']);
  expect(whyOf([0.25, 0.3, 0.25])[0]).toBe('most mixes');
});
