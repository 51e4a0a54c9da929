import { convertRgbToXyz65, convertXyz65ToLab65 } from 'culori/fn';
import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { spectrumSize } from '../../../../../app/core/colour/spectrum.ts';
import { spectrumFromLab } from '../../../../../app/core/paint/measure/smoothest-spectrum.ts';
import { labSeen } from '../../../../support/paint/calibration.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const labOf = (r: number, g: number, b: number): Lab => {
  const lab = convertXyz65ToLab65(convertRgbToXyz65({ r, g, b }));
  return [lab.l, lab.a, lab.b];
};

describe('smoothest spectrum of a colour', () => {
  it('looks like it to 1e-6 for 1000 seeded colours, all bands within 0..1', () => {
    const random = seeded(2020);
    let worst = 0;
    for (let n = 0; n < 1000; n++) {
      const lab = labOf(random(), random(), random());
      const found = spectrumFromLab(lab);
      expect(Math.min(...found)).toBeGreaterThan(0);
      expect(Math.max(...found)).toBeLessThan(1);
      const back = labSeen(found);
      for (const i of [0, 1, 2] as const) worst = Math.max(worst, Math.abs(back[i] - lab[i]));
    }
    expect(worst).toBeLessThan(1e-6);
  });

  it('is flat for a grey, which is the smoothest there is', () => {
    const found = spectrumFromLab([50, 0, 0]);
    expect(Math.max(...found) - Math.min(...found)).toBeLessThan(1e-9);
    expect(found.length).toBe(spectrumSize);
  });

  it('has less slope than other spectra of the same colour (Burns 2020: least sum of squared slopes)', () => {
    const lab = labOf(0.8, 0.35, 0.2);
    const found = spectrumFromLab(lab).map((r) => Math.atanh(2 * r - 1));
    const slope = (z: Float64Array): number =>
      z.reduce((sum, value, i) => sum + (i ? (value - (z[i - 1] as number)) ** 2 : 0), 0);
    const random = seeded(5);
    for (let n = 0; n < 20; n++) {
      // Bent at random, then brought back to the colour by the same three sums.
      const bent = found.map((value) => value + 0.2 * (random() - 0.5));
      const seen = labSeen(bent.map((value) => (Math.tanh(value) + 1) / 2));
      const again = spectrumFromLab(seen).map((r) => Math.atanh(2 * r - 1));
      expect(slope(again)).toBeLessThan(slope(bent));
    }
  });

  it('refuses what no surface can be', () => {
    expect(() => spectrumFromLab([50, 120, -120])).toThrow(RangeError);
    expect(() => spectrumFromLab([100, 0, 0])).toThrow(RangeError);
  });
});
