import { describe, expect, it } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { labOfReflectance, spectrumSize } from '../../../../../app/core/colour/spectrum.ts';
import { colourOfWashes } from '../../../../../app/core/paint/colour-of-washes.ts';
import { layOver, paintLayer } from '../../../../../app/core/paint/layer.ts';
import { fitPaint as fitWithPauses } from '../../../../../app/core/paint/measure/fit-paint.ts';
import { paleWashAmount } from '../../../../../app/core/paint/measure/namesake.ts';
import type { PaintPatch } from '../../../../../app/core/paint/measure/paint-measure.ts';
import { isWhiteOrBlack, type Paint } from '../../../../../app/core/paint/paint.ts';
import { paintBox, placeAmongOwned } from '../../../../../app/core/paint/paint-box.ts';
import {
  madeLadder,
  normals,
  paintNamed,
  triedPaints,
} from '../../../../support/paint/made-ladder.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const options = {
  card: { id: 'mine', ci: [] as readonly string[] },
  known: new Map(),
  tried: triedPaints,
};
const fitPaint = (
  patches: readonly PaintPatch[],
  how: Parameters<typeof fitWithPauses>[1] = options,
) => fitWithPauses(patches, how, async () => {});
const normal = normals(seeded(4));
const blue = paintNamed('pb29-ultramarine-blue');
/** Black ink of L* 24, inside the surface. */
const black = new Float64Array(spectrumSize).fill(0.0402);
const ladder = [1, 2, 4, 8, 16];

const overBlack = (id: string, amount: number): PaintPatch => {
  const { K, S } = paintNamed(id);
  const lab = labOfReflectance(layOver(paintLayer(K, S, amount), black, new Float64Array(36)));
  return { lab, is: { kind: 'over-black', amount }, even: true };
};

describe('a paint from its patches', () => {
  it('is the same every time, positive and finite', async () => {
    const patches = madeLadder(blue, ladder, normal);
    const once = await fitPaint(patches, options);
    expect(await fitPaint(patches, options)).toEqual(once);
    for (const value of [...once.K, ...once.S]) expect(value).toBeGreaterThan(0);
    expect(once.K.length).toBe(spectrumSize);
    expect(once.expected.length).toBe(patches.length);
    for (const [n, lab] of once.expected.entries()) {
      expect(colourDifference(lab, patches[n]?.lab as Lab)).toBeLessThan(6);
    }
  });

  it('counts loads as the optics table does, whatever her amounts are called', async () => {
    const patches = madeLadder(blue, ladder, normal, 0, 0);
    const renamed = patches.map(({ lab }, n) => ({
      lab,
      is: { kind: 'step' as const, amount: 5 * (ladder[n] as number) },
      even: true,
    }));
    for (const list of [patches, renamed]) {
      const { K, S } = await fitPaint(list, options);
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

  it('a step over black tells hiding from shining through', async () => {
    for (const id of ['pg17-chromium-oxide', 'pr108-cadmium-red', 'pb29-ultramarine-blue']) {
      const paint = paintNamed(id);
      const steps = madeLadder(paint, ladder, normal);
      const off: number[] = [];
      for (const patches of [steps, [...steps, overBlack(id, 8)]]) {
        const { K, S } = await fitPaint(patches, options);
        const seen = labOfReflectance(layOver(paintLayer(K, S, 8), black, new Float64Array(36)));
        off.push(colourDifference(seen, overBlack(id, 8).lab));
      }
      expect(off[1], id).toBeLessThan(6);
      expect(off[1], id).toBeLessThan(off[0] as number);
    }
  });

  it('a mix with a known paint is heeded', async () => {
    const white = paintNamed('pw6-titanium-white');
    const known = new Map([[white.id, white]]);
    const paint = paintNamed('pv19-quinacridone-red');
    const lab = colourOfWashes([{ paints: [paint, white], parts: [1, 1], load: 8 }]);
    const patches = [
      ...madeLadder(paint, ladder, normal),
      { lab, is: halfWith(white.id), even: true },
    ];
    const found = await fitPaint(patches, { ...options, known });
    expect(colourDifference(found.expected[5] as Lab, lab)).toBeLessThan(4);
  });
});

const halfWith = (id: string) => ({ kind: 'half', with: id }) as const;

describe('how sure', () => {
  const of = (id: string, loads: readonly number[]) =>
    fitPaint(madeLadder(paintNamed(id), loads, normal), options);

  it('strong steps alone are not enough, and it says so', async () => {
    for (const id of ['pr254-pyrrole-red', 'pb151-phthalocyanine-blue', 'pbr7-burnt-umber']) {
      const strong = await of(id, [16, 24, 32]);
      expect(strong.why, id).toEqual({ why: 'only-strong' });
      // On screen: not sure.
      expect(strong.sure, id).toBeLessThan(0.45);
      expect((await of(id, ladder)).sure, id).toBeGreaterThan(strong.sure + 0.1);
    }
  });

  it('two steps are less sure than five', async () => {
    const two = await of('pb29-ultramarine-blue', [2, 8]);
    expect(two.why).toEqual({ why: 'few-steps', steps: 2 });
    expect(two.sure).toBeLessThan((await of('pb29-ultramarine-blue', ladder)).sure);
  });

  it('steps that were mixed up are found out', async () => {
    const patches = madeLadder(paintNamed('pr254-pyrrole-red'), ladder, normal);
    const order = [3, 0, 4, 1, 2];
    const shuffled = patches.map(({ is }, n) => ({
      lab: patches[order[n] as number]?.lab as Lab,
      is,
      even: true,
    }));
    const { why, sure } = await fitPaint(shuffled, options);
    expect(why).toEqual({ why: 'disagree' });
    expect(sure).toBeLessThan(0.45);
  });

  it('a white on white paper asks for a black line', async () => {
    const white = paintNamed('pw4-zinc-white');
    const steps = madeLadder(white, ladder, normal, 0.8);
    const { why, sure } = await fitPaint(steps, { ...options, card: { id: 'mine', ci: ['PW4'] } });
    expect(why).toEqual({ why: 'white-on-white' });
    expect(sure).toBeLessThan(0.2);
    const helped = [...steps, overBlack(white.id, 8), overBlack(white.id, 2)];
    expect(
      (await fitPaint(helped, { ...options, card: { id: 'mine', ci: ['PW4'] } })).sure,
    ).toBeGreaterThan(0.3);
  });

  it('says in words why nothing can be learned', async () => {
    const steps = madeLadder(blue, ladder, normal);
    await expect(fitPaint(steps.slice(0, 1))).rejects.toThrow(/at least two steps/);
    const same = ladder.map((amount) => ({
      lab: [60, 10, 10] as Lab,
      is: { kind: 'step' as const, amount },
      even: true,
    }));
    await expect(fitPaint(same)).rejects.toThrow(/look the same/);
    const unknown = [...steps, { lab: [50, 0, 0] as Lab, is: halfWith('nobody'), even: true }];
    await expect(fitPaint(unknown)).rejects.toThrow(/not in the box/);
  });
});

it('ladders of the most owned paints, Lab noise 1.5, loads 15 % off: two-paint mixes within a mean of 2', async () => {
  const paints = paintBox.filter(({ id, ci }) => placeAmongOwned(id) >= 0 && !isWhiteOrBlack(ci));
  const measured = new Map<Paint, Paint>();
  for (const paint of paints) {
    const { K, S } = await fitPaint(madeLadder(paint, ladder, normal), {
      ...options,
      card: { id: 'mine', ci: paint.ci },
    });
    measured.set(paint, { ...paint, K, S });
  }
  const off: number[] = [];
  for (const [one, paint] of paints.entries()) {
    for (const other of paints.slice(0, one)) {
      for (const parts of [
        [1, 1],
        [1, 3],
        [3, 1],
      ]) {
        for (const load of [2, 8]) {
          const byLoad = ({ K, S, ...rest }: Paint): Paint => ({ ...rest, K, S, strength: 1 });
          const colour = (pair: readonly Paint[]) =>
            colourOfWashes([{ paints: pair.map(byLoad), parts, load }]);
          const found = [paint, other].map((each) => measured.get(each) as Paint);
          off.push(colourDifference(colour([paint, other]), colour(found)));
        }
      }
    }
  }
  const mean = off.reduce((all, each) => all + each, 0) / off.length;
  console.info(
    `Made-up ladders, ${off.length} mixes of ${paints.length} paints: mean ${mean.toFixed(2)}`,
  );
  expect(paints.length).toBeGreaterThan(20);
  expect(mean).toBeLessThan(2);
});
