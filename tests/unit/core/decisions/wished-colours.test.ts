import { expect, it } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import type { ColourWish } from '../../../../app/core/decisions/plan-wishes.ts';
import { paintOfFamilies } from '../../../../app/core/decisions/wished-colours.ts';
import { colourOfWashes } from '../../../../app/core/paint/colour-of-washes.ts';
import { hueAtLightness } from '../../../../app/core/paint/hue-at-lightness.ts';
import { knownPaints } from '../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import { wishedColours } from '../../../../app/core/plan/targets/adjust-targets.ts';
import { wishedPalette } from '../../../../app/core/plan/targets/planned-slots.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';

const blue = 'pb29-ultramarine-blue';
const sienna = 'pbr7-burnt-sienna';
const paper = { id: 1, share: 0.5, name: 'yellow', lab: [70, 5, 40] as const };
const grass = { id: 2, share: 0.5, name: 'green', lab: [50, -20, 25] as const };
const made = madeReading(
  tableOf(
    [90, 60, 30],
    [
      [5, 40],
      [-20, 25],
    ],
  ),
);
const reading = { ...made, families: [paper, grass] };

it('reads a hue off a ladder by lightness, and keeps to its ends', () => {
  const ladder: Lab[] = [
    [95, 0, 0],
    [75, 10, -20],
    [35, 30, -40],
    [37, 90, 90], // a thick scattering paint turns back: never used
  ];
  expect(hueAtLightness(ladder, 85)).toEqual([5, -10]);
  expect(hueAtLightness(ladder, 55)).toEqual([20, -30]);
  expect(hueAtLightness(ladder, 20)).toEqual([30, -40]);
  expect(hueAtLightness(ladder, 99)).toEqual([0, 0]);
  expect(hueAtLightness([], 50)).toEqual([0, 0]);
});

it('finds the family nearest to the colour she saw; the later choice counts', () => {
  const wish: ColourWish = {
    mode: 'own',
    hues: [
      { family: [6, 41], paint: blue },
      { family: [-19, 24], paint: blue },
      { family: [-21, 25], paint: sienna },
    ],
  };
  expect([...paintOfFamilies(wish, reading.families)]).toEqual([
    [1, blue],
    [2, sienna],
  ]);
  expect(paintOfFamilies({ mode: 'photo' }, reading.families).size).toBe(0);
});

it('gives a target the colour its paint has at that value, and leaves values and whites alone', () => {
  const wish: ColourWish = { mode: 'own', hues: [{ family: [-20, 25], paint: blue }] };
  const slots = wishedColours(reading.slots, reading.families, wish, knownPaints());
  let painted = 0;
  for (const [i, before] of reading.slots.entries()) {
    const after = slots[i];
    expect(after?.target[0]).toBe(before.target[0]);
    expect(after?.reserve).toBe(before.reserve);
    if (before.family === 1 || before.reserve) {
      expect(after?.target).toEqual(before.target);
      continue;
    }
    painted++;
    // The same by a dense ladder of 350 loads, up to a full coat: 20 ml/m2 of this blue (the optics table).
    const near = Array.from({ length: 350 }, (_, n) =>
      colourOfWashes([
        {
          paints: knownPaints().filter(({ id }) => id === blue),
          parts: [1],
          load: 0.02 * 1.02 ** n,
        },
      ]),
    ).reduce((one, two) =>
      Math.abs(two[0] - before.target[0]) < Math.abs(one[0] - before.target[0]) ? two : one,
    );
    expect(Math.abs((after?.target[1] ?? 0) - near[1])).toBeLessThan(2);
    expect(Math.abs((after?.target[2] ?? 0) - near[2])).toBeLessThan(2);
  }
  expect(painted).toBeGreaterThan(0);
});

it('wants the paints of her hues in the palette, whatever she left out before', () => {
  const own = wishedPalette({
    exclude: [blue, 'pg7-phthalocyanine-green'],
    must: [sienna],
    paletteSize: 1,
    colours: { mode: 'own', hues: [{ family: [0, 0], paint: blue }] },
  });
  expect(own.must).toEqual([sienna, blue]);
  expect(own.exclude).toEqual(['pg7-phthalocyanine-green']);
  expect(own.paletteSize).toBe(2);
  const one = wishedPalette({ must: [sienna], colours: { mode: 'one', paint: blue } });
  expect(one.chosen).toEqual([blue]);
  const plain = { must: [sienna], colours: { mode: 'photo' } as const };
  expect(wishedPalette(plain)).toBe(plain);
});

it('plans in one paint: nothing else in it, values kept, no word about colours', async () => {
  const box = [blue, sienna, 'py43-yellow-ochre'];
  const wishes = { box, colours: { mode: 'one', paint: blue } as const };
  const plan = await buildPlan(reading, wishes, noCheckpoint);
  expect(plan.palette.map(({ id }) => id)).toEqual([blue]);
  expect(plan.mixes.flatMap(({ parts }) => parts).every(({ paint }) => paint === blue)).toBe(true);
  const after = plan.steps.at(-1)?.after ?? [];
  for (const [i, slot] of plan.slots.entries()) {
    if (!slot.reserve) expect(Math.abs((after[i]?.[0] ?? 0) - slot.target[0])).toBeLessThan(5);
  }
  const photo = await buildPlan(reading, { box }, noCheckpoint);
  expect(photo.id).not.toBe(plan.id);
  expect(plan.warnings.map(({ code }) => code)).not.toContain('colour-out-of-reach');
});

it('plans in her own hues: each family comes out in the hue of its paint', async () => {
  const colours: ColourWish = {
    mode: 'own',
    hues: [
      { family: [5, 40], paint: sienna },
      { family: [-20, 25], paint: blue },
    ],
  };
  const plan = await buildPlan(
    reading,
    { box: [blue, sienna, 'py43-yellow-ochre'], colours, paletteSize: 3 },
    noCheckpoint,
  );
  const ids = plan.palette.map(({ id }) => id);
  expect(ids).toContain(blue);
  expect(ids).toContain(sienna);
  const after = plan.steps.at(-1)?.after ?? [];
  for (const [i, slot] of plan.slots.entries()) {
    if (slot.reserve || slot.band !== 2) continue;
    const [lightness, , b] = after[i] as Lab;
    expect(Math.abs(lightness - slot.target[0])).toBeLessThan(5);
    if (slot.family === 1) expect(b).toBeGreaterThan(5);
    else expect(b).toBeLessThan(-10);
  }
});
