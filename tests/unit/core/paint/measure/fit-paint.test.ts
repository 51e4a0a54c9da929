import { describe, expect, it } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { labOfReflectance, spectrumSize } from '../../../../../app/core/colour/spectrum.ts';
import { colourOfWashes } from '../../../../../app/core/paint/colour-of-washes.ts';
import { layOver, paintLayer } from '../../../../../app/core/paint/layer.ts';
import { fitPaint, paleWashAmount } from '../../../../../app/core/paint/measure/fit-paint.ts';
import type { PaintPatch } from '../../../../../app/core/paint/measure/paint-measure.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import {
  madeLadder,
  normals,
  paintNamed,
  triedPaints,
} from '../../../../support/paint/made-ladder.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const options = { known: new Map(), tried: triedPaints, isWhite: false };
const normal = normals(seeded(4));
const blue = paintNamed('pb29-ultramarine-blue');
const black = new Float64Array(spectrumSize).fill(0.012);
const ladder = [1, 2, 4, 8, 16];

const overBlack = (id: string, amount: number): PaintPatch => {
  const { K, S } = paintNamed(id);
  const lab = labOfReflectance(layOver(paintLayer(K, S, amount), black, new Float64Array(36)));
  return { lab, is: { kind: 'over-black', amount } };
};

describe('a paint from its patches', () => {
  it('is the same every time, positive and finite', () => {
    const patches = madeLadder(blue, ladder, normal);
    const once = fitPaint(patches, options);
    expect(fitPaint(patches, options)).toEqual(once);
    for (const value of [...once.K, ...once.S]) expect(value).toBeGreaterThan(0);
    expect(once.K.length).toBe(spectrumSize);
    expect(once.expected.length).toBe(patches.length);
    for (const [n, lab] of once.expected.entries()) {
      expect(colourDifference(lab, patches[n]?.lab as Lab)).toBeLessThan(6);
    }
  });

  it('counts loads as the optics table does, whatever her amounts are called', () => {
    const patches = madeLadder(blue, ladder, normal, 0, 0);
    const renamed = patches.map(({ lab }, n) => ({
      lab,
      is: { kind: 'step' as const, amount: 5 * (ladder[n] as number) },
    }));
    for (const list of [patches, renamed]) {
      const { K, S } = fitPaint(list, options);
      expect(paleWashAmount({ K, S })).toBeCloseTo(1, 6);
      const own = { ...blue, K, S };
      for (const load of [1, 4, 16]) {
        const off = colourDifference(
          colourOfWashes([{ paints: [own], parts: [1], load }]),
          colourOfWashes([{ paints: [blue], parts: [1], load }]),
        );
        expect(off, `load ${load}`).toBeLessThan(4);
      }
    }
  });

  it('the table itself has load 1 at the pale wash (data/pigment-optics.json)', () => {
    for (const paint of paintBox) {
      expect(paleWashAmount(paint), paint.id).toBeGreaterThan(0.99);
      expect(paleWashAmount(paint), paint.id).toBeLessThan(1.01);
    }
  });

  it('a step over black tells hiding from shining through', () => {
    for (const id of ['pg17-chromium-oxide', 'pr108-cadmium-red', 'pb29-ultramarine-blue']) {
      const paint = paintNamed(id);
      const steps = madeLadder(paint, ladder, normal);
      const off = [steps, [...steps, overBlack(id, 8)]].map((patches) => {
        const { K, S } = fitPaint(patches, options);
        const seen = labOfReflectance(layOver(paintLayer(K, S, 8), black, new Float64Array(36)));
        return colourDifference(seen, overBlack(id, 8).lab);
      });
      expect(off[1], id).toBeLessThan(5);
      expect(off[1], id).toBeLessThan(off[0] as number);
    }
  });

  it('a mix with a known paint is heeded', () => {
    const white = paintNamed('pw6-titanium-white');
    const known = new Map([[white.id, white]]);
    const paint = paintNamed('pv19-quinacridone-red');
    const lab = colourOfWashes([{ paints: [paint, white], parts: [1, 1], load: 8 }]);
    const patches = [...madeLadder(paint, ladder, normal), { lab, is: halfWith(white.id) }];
    const found = fitPaint(patches, { ...options, known });
    expect(colourDifference(found.expected[5] as Lab, lab)).toBeLessThan(4);
  });
});

const halfWith = (id: string) => ({ kind: 'half', with: id }) as const;

describe('how sure', () => {
  const of = (id: string, loads: readonly number[]) =>
    fitPaint(madeLadder(paintNamed(id), loads, normal), options);

  it('strong steps alone are not enough, and it says so', () => {
    for (const id of ['pr254-pyrrole-red', 'pb151-phthalocyanine-blue', 'pbr7-burnt-umber']) {
      const strong = of(id, [16, 24, 32]);
      expect(strong.why, id).toMatch(/^Only strong steps.*thinner steps/);
      expect(strong.sure, id).toBeLessThan(0.35);
      expect(of(id, ladder).sure, id).toBeGreaterThan(0.6);
    }
  });

  it('two steps are less sure than five', () => {
    const two = of('pb29-ultramarine-blue', [2, 8]);
    expect(two.why).toMatch(/only two steps/);
    expect(two.sure).toBeLessThan(of('pb29-ultramarine-blue', ladder).sure);
  });

  it('steps that were mixed up are found out', () => {
    const patches = madeLadder(paintNamed('pr254-pyrrole-red'), ladder, normal);
    const order = [3, 0, 4, 1, 2];
    const shuffled = patches.map(({ is }, n) => ({
      lab: patches[order[n] as number]?.lab as Lab,
      is,
    }));
    const { why, sure } = fitPaint(shuffled, options);
    expect(why).toMatch(/do not agree/);
    expect(sure).toBeLessThan(0.45);
  });

  it('a white on white paper asks for a black line', () => {
    const white = paintNamed('pw4-zinc-white');
    const steps = madeLadder(white, ladder, normal, 0.8);
    const { why, sure } = fitPaint(steps, { ...options, isWhite: true });
    expect(why).toMatch(/black line/);
    expect(sure).toBeLessThan(0.2);
    const helped = [...steps, overBlack(white.id, 8), overBlack(white.id, 2)];
    expect(fitPaint(helped, { ...options, isWhite: true }).sure).toBeGreaterThan(0.3);
  });

  it('says in words why nothing can be learned', () => {
    const steps = madeLadder(blue, ladder, normal);
    expect(() => fitPaint(steps.slice(0, 1), options)).toThrow(/at least two steps/);
    const same = ladder.map((amount) => ({
      lab: [60, 10, 10] as Lab,
      is: { kind: 'step' as const, amount },
    }));
    expect(() => fitPaint(same, options)).toThrow(/look the same/);
    const unknown = [...steps, { lab: [50, 0, 0] as Lab, is: halfWith('nobody') }];
    expect(() => fitPaint(unknown, options)).toThrow(/not in the box/);
  });
});
