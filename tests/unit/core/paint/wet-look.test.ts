import { describe, expect, it } from 'vitest';
import { labOfReflectance } from '../../../../app/core/colour/spectrum.ts';
import { drySurface, outside } from '../../../../app/core/colour/surface.ts';
import { defaultPaper, reflectanceOfWashes } from '../../../../app/core/paint/colour-of-washes.ts';
import { strengthOf } from '../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';
import { dryingShift, wetLab } from '../../../../app/core/paint/wet-look.ts';
import elsewhere from '../../../fixtures/wet-dry.json';

const single = paintBox.filter(({ provenance }) => provenance !== 'recipe');

/** Dry washes of every paint of one pigment at a load of the table, on paper; 'm' is its masstone. */
const washes = (load: string): Float64Array[] =>
  single.map((paint) =>
    reflectanceOfWashes([
      {
        paints: [paint],
        parts: [1],
        load: (load === 'm' ? (paint.mostLoad ?? 0) : Number(load)) / strengthOf(paint),
      },
    ]),
  );

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const chroma = ([, a, b]: readonly number[]): number => Math.hypot(a ?? 0, b ?? 0);

/**
 * Own computation apart from this code, to which the table was made. The law it bounds: Angstrom, A., The albedo of
 * various surfaces of ground, 1925 (from memory). The formula as it stands there, by wavelength, for any share of full pores: L*.
 */
function lightnessByFormula(inside: Float64Array, w: number, k1wet: number): number {
  const seen = Array.from(inside, (r) => {
    const a = (outside(r, drySurface) - 0.025) / (1 - 0.025);
    const soaked = a / (1.777 * (1 - a) + a);
    return k1wet + (1 - k1wet) * ((1 - w) * a + w * soaked);
  });
  return labOfReflectance(seen, { k1: 0, k2: 0 })[0];
}

describe.each(['shiny', 'satin'] as const)('%s', (shine) => {
  const rows = Object.entries(elsewhere.table[shine]) as [string, number[]][];
  const { w, k1wet, wRange } = elsewhere.parameters.find(({ wetness }) => wetness === shine) ?? {
    w: Number.NaN,
    k1wet: Number.NaN,
    wRange: [],
  };

  it.each(rows)(
    'dries lighter as reckoned elsewhere at load %s',
    (load, [shift, largest, change]) => {
      const looks = washes(load).map((wash) => ({
        dry: labOfReflectance(wash),
        wet: wetLab(wash, drySurface, shine),
      }));
      const shifts = looks.map(({ dry, wet }) => dry[0] - wet[0]);
      expect(Math.abs(mean(shifts) - (shift ?? 0))).toBeLessThan(0.12);
      expect(Math.abs(Math.max(...shifts) - (largest ?? 0))).toBeLessThan(0.12);
      const changes = looks.map(({ dry, wet }) => chroma(dry) - chroma(wet));
      expect(Math.abs(mean(changes) - (change ?? 0))).toBeLessThan(0.2);
    },
  );

  it.each(rows)('its range from two colours is that by wavelength, load %s', (load) => {
    const [low = 0, high = 0] = wRange;
    for (const wash of washes(load)) {
      const dry = labOfReflectance(wash);
      const wet = wetLab(wash, drySurface, shine);
      expect(wet[0]).toBeCloseTo(lightnessByFormula(wash, w, k1wet), 6);
      const [least, most] = dryingShift(dry, wet, shine);
      expect(least).toBeLessThanOrEqual(dry[0] - wet[0]);
      expect(most).toBeGreaterThanOrEqual(dry[0] - wet[0]);
      expect(Math.abs(least - (dry[0] - lightnessByFormula(wash, low, k1wet)))).toBeLessThan(0.5);
      expect(Math.abs(most - (dry[0] - lightnessByFormula(wash, high, k1wet)))).toBeLessThan(1.5);
    }
  });

  it.each(['1', '4', 'm'] as const)(
    'the mean ends of the range are as reckoned elsewhere, load %s',
    (load) => {
      const ranges = washes(load).map((wash) =>
        dryingShift(labOfReflectance(wash), wetLab(wash, drySurface, shine), shine),
      );
      const [low, high] = [
        mean(ranges.map(([least]) => least)),
        mean(ranges.map(([, most]) => most)),
      ];
      expect(Math.abs(low - elsewhere.meanShiftLow[shine][load])).toBeLessThan(0.3);
      expect(Math.abs(high - elsewhere.meanShiftHigh[shine][load])).toBeLessThan(0.4);
    },
  );

  it('bare paper', () => {
    const shift = labOfReflectance(defaultPaper)[0] - wetLab(defaultPaper, drySurface, shine)[0];
    expect(Math.abs(shift - elsewhere.barePaperShiftL[shine])).toBeLessThan(0.12);
  });
});
