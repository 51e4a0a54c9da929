import { differenceCiede2000 } from 'culori';
import { expect, test } from 'vitest';
import { colourOfWashes } from '../../../../app/core/paint/colour-of-washes.ts';
import { mixSpectra } from '../../../../app/core/paint/layer.ts';
import { MixSensitivity } from '../../../../app/core/paint/mix-sensitivity.ts';
import type { Paint } from '../../../../app/core/paint/paint.ts';
import { paintsNamed } from '../../../support/plan/solved-facts.ts';

const oracle = differenceCiede2000();
const sensitivity = new MixSensitivity();

function sensitivityOf(paints: readonly Paint[], parts: readonly number[]): number {
  const { K, S, coat } = mixSpectra(paints, parts);
  const alone = paints.map((paint) => {
    const own = mixSpectra([paint], [1]);
    return [own.K, own.S] as const;
  });
  return sensitivity.of(K, S, coat, alone, parts);
}

const look = (paints: readonly Paint[], parts: readonly number[], load: number) => {
  const [l, a, b] = colourOfWashes([{ paints, parts, load }]);
  return { mode: 'lab65', l, a, b } as const;
};

/** Each paint 15 % stronger, one after the other, laid and looked at: root of the sum of squares. */
function shaken(paints: readonly Paint[], parts: readonly number[], load: number): number {
  const still = look(paints, parts, load);
  return Math.hypot(
    ...paints.map((paint) => {
      const stronger = { ...paint, strength: 1.15 * (paint.strength ?? 1) };
      const others = paints.map((each) => (each === paint ? stronger : each));
      return oracle(still, look(others, parts, load));
    }),
  );
}

const [sienna, ultramarine, umber, crimson, green, phthalo] = paintsNamed(
  'pbr7-burnt-sienna',
  'pb29-ultramarine-blue',
  'pbr7-burnt-umber',
  'pr83-alizarin-crimson',
  'ready-sap-green',
  'pb153-phthalocyanine-blue',
) as [Paint, Paint, Paint, Paint, Paint, Paint];

const mixes: readonly (readonly [readonly Paint[], readonly number[]])[] = [
  [[ultramarine], [1]],
  [
    [sienna, ultramarine],
    [1, 1],
  ],
  [
    [sienna, ultramarine],
    [3, 1],
  ],
  [
    [umber, ultramarine],
    [3, 1],
  ],
  [
    [sienna, phthalo],
    [5, 2],
  ],
  [
    [crimson, green, ultramarine],
    [3, 3, 2],
  ],
];

test('in the middle tones it foretells within a fifth how far a mix moves with its tubes', () => {
  for (const [paints, parts] of mixes) {
    const { coat } = mixSpectra(paints, parts);
    for (const share of [1 / 16, 1 / 8, 1 / 4]) {
      const load = share * coat;
      const fall = look(paints, parts, load).l - look(paints, parts, 1.02 * load).l;
      const foretold = (sensitivityOf(paints, parts) * fall) / Math.log(1.02);
      const name = `${paints.map(({ id }) => id).join(' + ')} at ${share}`;
      expect(Math.abs(foretold / shaken(paints, parts, load) - 1), name).toBeLessThan(0.2);
    }
  }
});

test('a grey of complementaries is unsteadier than one whose paints lie near each other, and than one paint', () => {
  const grey = sensitivityOf([sienna, ultramarine], [1, 1]);
  expect(grey).toBeGreaterThan(1.3 * sensitivityOf([umber, ultramarine], [3, 1]));
  expect(grey).toBeGreaterThan(1.3 * sensitivityOf([ultramarine], [1]));
});
