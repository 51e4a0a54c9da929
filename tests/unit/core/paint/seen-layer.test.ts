import { expect, it } from 'vitest';
import { spectrumSize, writeLab } from '../../../../app/core/colour/spectrum.ts';
import { drySurface } from '../../../../app/core/colour/surface.ts';
import { reflectanceOver, writeLayerSample } from '../../../../app/core/paint/layer.ts';
import { fallOf, writeSeenLayer } from '../../../../app/core/paint/seen-layer.ts';
import { seededRandom } from '../../../bench/seeded-random.ts';

const random = seededRandom(5);

it('falls as the exponential does', () => {
  expect(fallOf(0)).toBe(1);
  expect(fallOf(1000)).toBe(0);
  expect(fallOf(Number.POSITIVE_INFINITY)).toBe(0);
  for (let n = 0; n < 20_000; n++) {
    const w = 36 * random() ** 3;
    expect(Math.abs(fallOf(w) / Math.exp(-w) - 1)).toBeLessThan(2e-15);
  }
});

it('is what layer, ground and surface give one after the other', () => {
  const [kx, sx, ground] = [0, 1, 2].map(() => new Float64Array(spectrumSize)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const [pair, sheet, wanted, got] = [2, spectrumSize, 3, 3].map((n) => new Float64Array(n)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let round = 0; round < 4000; round++) {
    // From hardly any paint to a thick coat; none at all, and paint that only scatters, at some samples.
    const depth = 10 ** (8 * random() - 6);
    for (let i = 0; i < spectrumSize; i++) {
      kx[i] = random() < 0.1 ? 0 : depth * random();
      sx[i] = random() < 0.1 ? 0 : depth * random();
      ground[i] = random();
      writeLayerSample(kx[i] as number, sx[i] as number, pair, 0);
      sheet[i] = reflectanceOver(pair[0] as number, pair[1] as number, ground[i] as number);
    }
    writeLab(sheet, drySurface, wanted);
    writeSeenLayer(kx, sx, ground, got);
    for (const c of [0, 1, 2]) {
      expect(Math.abs((got[c] as number) - (wanted[c] as number))).toBeLessThan(1e-10);
    }
  }
});
