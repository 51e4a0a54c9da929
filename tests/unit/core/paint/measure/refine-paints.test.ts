import { describe, expect, it } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import type { Lab } from '../../../../../app/core/colour/lab.ts';
import { colourOfWashes } from '../../../../../app/core/paint/colour-of-washes.ts';
import { usualLoad } from '../../../../../app/core/paint/consistency.ts';
import {
  type PageSquare,
  refinePaints,
  squaresOfPage,
} from '../../../../../app/core/paint/measure/refine-paints.ts';
import type { Paint } from '../../../../../app/core/paint/paint.ts';
import { normals, paintNamed } from '../../../../support/paint/made-ladder.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const noPause = async (): Promise<void> => {};
const ids = [
  'pb29-ultramarine-blue',
  'pbr7-burnt-sienna',
  'py74-arylide-yellow',
  'pv19-quinacridone-rose',
  'pg7-phthalocyanine-green',
];
/** Her tubes as they truly are. */
const truth = ids.map(paintNamed);
const byId = (list: readonly Paint[], id: string): Paint =>
  list.find((each) => each.id === id) as Paint;

/** As she had measured them: a bent absorption, scattering off by half, strength off by up to 40 %. */
const measured = truth.map((paint, n): Paint => {
  const bend = (i: number): number => Math.exp(0.3 * Math.sin(i / 6 + 2 * n));
  return {
    ...paint,
    K: paint.K.map((k, i) => k * bend(i)),
    S: paint.S.map((s) => s * (n % 2 ? 1.5 : 0.67)),
    strength: (paint.strength ?? 1) * (n % 2 ? 1.4 : 0.75),
    optics: { from: 'measured', sure: 0.7, why: '' },
  };
});

const milk = usualLoad('milk');

/** The page as a painter makes it: amounts 15 % off, colours 1 Lab. */
function page(seed: number): PageSquare[] {
  const normal = normals(seeded(seed));
  return squaresOfPage(ids).map((names) => {
    const parts = names.map(() => Math.exp(0.15 * normal()));
    const sum = parts.reduce((all, each) => all + each, 0);
    const wash = {
      paints: names.map((id) => byId(truth, id)),
      parts,
      load: (milk * sum) / names.length,
    };
    const lab = colourOfWashes([wash]).map((value) => value + normal()) as unknown as Lab;
    return { lab, paints: names, even: true };
  });
}

/** Mean error of mixes 1 : 3 and 3 : 1 by volume, which no page has, at three strengths. */
function errorOf(paints: readonly Paint[]): number {
  const off = squaresOfPage(ids)
    .filter(({ length }) => length === 2)
    .flatMap((pair) =>
      [
        [1, 3],
        [3, 1],
      ].flatMap((parts) =>
        [2, 6, 12].map((load) => {
          const colour = (list: readonly Paint[]) =>
            colourOfWashes([{ paints: pair.map((id) => byId(list, id)), parts, load }]);
          return colourDifference(colour(paints), colour(truth));
        }),
      ),
    );
  return off.reduce((sum, each) => sum + each, 0) / off.length;
}

describe('a page of one-to-one mixes', () => {
  it('has a square for each paint and each pair', () => {
    expect(squaresOfPage(['a', 'b', 'c'])).toEqual([
      ['a'],
      ['a', 'b'],
      ['a', 'c'],
      ['b'],
      ['b', 'c'],
      ['c'],
    ]);
    expect(squaresOfPage(ids).length).toBe(15);
  });

  it('brings mixes it does not hold nearer to the truth, strengths too', async () => {
    for (const seed of [1, 2, 3]) {
      const refined = await refinePaints(page(seed), measured, [], noPause);
      const after = measured.map((paint, n) => ({ ...paint, ...refined[n] }));
      const [before, now] = [errorOf(measured), errorOf(after)];
      console.info(
        `Page ${seed}: mixes off by ${before.toFixed(2)} before, ${now.toFixed(2)} after`,
      );
      expect(now).toBeLessThan(0.6 * before);
      for (const [n, { strength, mostLoad }] of refined.entries()) {
        const off = (list: readonly Paint[]): number =>
          Math.abs(Math.log((list[n]?.strength ?? 1) / (truth[n]?.strength ?? 1)));
        expect(off(after)).toBeLessThan(off(measured));
        expect(mostLoad / strength).toBeCloseTo(
          (measured[n]?.mostLoad ?? 0) / (measured[n]?.strength ?? 1),
          6,
        );
      }
    }
  });

  it('says what changed, and leaves a known paint as it is', async () => {
    const own = measured.slice(0, 4);
    const refined = await refinePaints(page(4), own, [truth[4] as Paint], noPause);
    expect(refined.map(({ id }) => id)).toEqual(ids.slice(0, 4));
    expect(refined[1]?.told).toEqual({
      name: 'burnt sienna',
      changes: expect.arrayContaining(['weaker']),
    });
    const right = await refinePaints(
      page(5),
      [{ ...(truth[0] as Paint) }],
      truth.slice(1),
      noPause,
    );
    expect(right[0]?.strength).toBeCloseTo(truth[0]?.strength ?? 0, 0);
  });

  it('says in words why nothing can be learned', async () => {
    const squares = page(6);
    await expect(refinePaints(squares, [], truth, noPause)).rejects.toThrow(/measured by you/);
    const alone = squares.filter(({ paints }) => paints.length === 1);
    await expect(refinePaints(alone, measured, [], noPause)).rejects.toThrow(/No mix on the page/);
    await expect(refinePaints(squares, measured.slice(1), [], noPause)).rejects.toThrow(
      /not in the box/,
    );
  });
});
