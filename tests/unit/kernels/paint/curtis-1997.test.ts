import { describe, expect, it } from 'vitest';
import { writeLayerBand } from '../../../../workers/kernels/optics/layer.ts';
import published from '../../../fixtures/curtis-1997-rgb-ks.json';

// Curtis, Anderson, Seims, Fleischer, Salesin (1997), Computer-Generated Watercolor, SIGGRAPH 97, 421-430:
// K and S of a layer of unit thickness by channel, found there from its looks over white and over black.

/** The paper's own way back: K and S from reflectance over white (Rg 1) and over black (Rg 0). */
function fromLooks(overWhite: number, overBlack: number): { K: number; S: number } {
  const a = (overWhite + (overBlack - overWhite + 1) / overBlack) / 2;
  const b = Math.sqrt(a * a - 1);
  const cothOf = (b * b - (a - overWhite) * (a - 1)) / (b * (1 - overWhite));
  const S = Math.log((cothOf + 1) / (cothOf - 1)) / 2 / b;
  return { K: S * (a - 1), S };
}

function looks(K: number, S: number): { white: number; black: number } {
  const pair = new Float64Array(2);
  writeLayerBand(K, S, pair, 0);
  const black = pair[0] as number;
  return { black, white: black + (pair[1] as number) ** 2 / (1 - black) };
}

describe('the published watercolour table, three channels', () => {
  it.each(published.pigments)('$name: its looks lead back to its K and S', ({ K, S }) => {
    for (const c of [0, 1, 2]) {
      const { white, black } = looks(K[c] as number, S[c] as number);
      const found = fromLooks(white, black);
      expect(found.K).toBeCloseTo(K[c] as number, 6);
      expect(found.S).toBeCloseTo(S[c] as number, 6);
    }
  });

  // From memory: what the names mean to a painter.
  it('looks over white as its name says', () => {
    const seen = (name: string): number[] => {
      const found = published.pigments.find((each) => each.name === name);
      if (!found) throw new Error(name);
      return found.K.map((k, c) => looks(k, found.S[c] as number).white);
    };
    const [r, g, b] = seen('Quinacridone Rose') as [number, number, number];
    expect(r).toBeGreaterThan(b);
    expect(b).toBeGreaterThan(g);
    const yellow = seen('Hansa Yellow') as [number, number, number];
    expect(Math.min(yellow[0], yellow[1])).toBeGreaterThan(4 * yellow[2]);
    const blue = seen('French Ultramarine') as [number, number, number];
    expect(blue[2]).toBeGreaterThan(3 * Math.max(blue[0], blue[1]));
  });
});
