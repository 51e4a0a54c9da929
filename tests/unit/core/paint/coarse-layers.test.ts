import { expect, it } from 'vitest';
import { colourDifference } from '../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { spectrumSize } from '../../../../app/core/colour/spectrum.ts';
import { CoarseLayers } from '../../../../app/core/paint/coarse-layers.ts';
import { defaultPaper, reflectanceOfWashes } from '../../../../app/core/paint/colour-of-washes.ts';
import { mixSpectra } from '../../../../app/core/paint/layer.ts';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';
import { writeSeenLayer } from '../../../../app/core/paint/seen-layer.ts';
import { seededRandom } from '../../../bench/seeded-random.ts';

// The reference is `writeSeenLayer` at all 36 samples, and differences of this very look for its slopes (own).
const random = seededRandom(11);
const some = () => paintBox[Math.floor(random() * paintBox.length)] as (typeof paintBox)[number];

function exactly(
  puddles: readonly ReturnType<typeof mixSpectra>[],
  amounts: readonly number[],
  ground: Float64Array,
): Lab {
  const [kx, sx] = [new Float64Array(spectrumSize), new Float64Array(spectrumSize)];
  for (const [p, { K, S }] of puddles.entries()) {
    for (let i = 0; i < spectrumSize; i++) {
      kx[i] = (kx[i] as number) + (amounts[p] as number) * (K[i] as number);
      sx[i] = (sx[i] as number) + (amounts[p] as number) * (S[i] as number);
    }
  }
  const out = new Float64Array(3);
  writeSeenLayer(kx, sx, ground, out);
  return [...out] as unknown as Lab;
}

const lookAt = (layers: CoarseLayers, amounts: readonly number[]): Lab => {
  layers.look(Float64Array.from(amounts));
  return [...layers.lab] as unknown as Lab;
};

const moved = (colour: Lab, from: Lab, to: Lab): Lab => [
  colour[0] + to[0] - from[0],
  colour[1] + to[1] - from[1],
  colour[2] + to[2] - from[2],
];

it('tells how a colour changes with the amounts nearly as all samples do', () => {
  for (let round = 0; round < 400; round++) {
    const puddles = [mixSpectra([some(), some()], [2, 1]), mixSpectra([some()], [1])];
    const washed = reflectanceOfWashes([{ paints: [some()], parts: [1], load: 3 * random() }]);
    const ground = round % 2 ? washed : defaultPaper;
    const layers = new CoarseLayers(puddles);
    layers.ground = ground;
    const amounts = [8 * random() ** 3, 8 * random() ** 3];
    const more = amounts.map((amount) => 1.2 * amount);
    const there = exactly(puddles, more, ground);
    const coarse = lookAt(layers, more);
    expect(colourDifference(there, coarse)).toBeLessThan(1.5);
    const told = moved(exactly(puddles, amounts, ground), lookAt(layers, amounts), coarse);
    expect(colourDifference(there, told)).toBeLessThan(0.25);
  }
});

it('has the slopes that differences have', () => {
  const by = 1e-5;
  for (let round = 0; round < 200; round++) {
    const puddles = [0, 1, 2].map(() => mixSpectra([some()], [1]));
    const layers = new CoarseLayers(puddles);
    layers.ground = reflectanceOfWashes([{ paints: [some()], parts: [1], load: random() }]);
    const amounts = puddles.map(() => 0.02 + 5 * random() ** 3);
    layers.look(Float64Array.from(amounts));
    const slopes = [...layers.slopes];
    for (const p of [0, 1, 2]) {
      const amount = amounts[p] as number;
      const above = lookAt(layers, amounts.with(p, amount + by));
      const below = lookAt(layers, amounts.with(p, amount - by));
      for (const c of [0, 1, 2] as const) {
        const slope = (above[c] - below[c]) / (2 * by);
        expect(slopes[3 * p + c]).toBeCloseTo(slope, 3);
      }
    }
  }
});

it('is the ground where nothing lies, and its slopes are finite there', () => {
  const puddles = [mixSpectra([some()], [1])];
  const layers = new CoarseLayers(puddles);
  layers.ground = defaultPaper;
  expect(colourDifference(lookAt(layers, [0]), exactly(puddles, [0], defaultPaper))).toBeLessThan(
    0.05,
  );
  expect([...layers.slopes].every(Number.isFinite)).toBe(true);
  expect(layers.slopes[0]).toBeLessThan(0);
});
