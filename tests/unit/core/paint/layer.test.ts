import { Color } from 'spectral.js';
import { describe, expect, it } from 'vitest';
import { spectrumSize } from '../../../../app/core/colour/spectrum.ts';
import {
  layOver,
  mixSpectra,
  paintLayer,
  reflectanceOver,
  reflectionsBetween,
  writeLayerSample,
} from '../../../../app/core/paint/layer.ts';
import published from '../../../fixtures/curtis-1997-rgb-ks.json';
import publishedKubelkaMunk from '../../../fixtures/km-formulas-and-examples.json';

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
  writeLayerSample(K, S, pair, 0);
  const black = pair[0] as number;
  return { black, white: reflectanceOver(black, pair[1] as number, 1) };
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

const flat = (value: number): number[] => Array.from({ length: spectrumSize }, () => value);

function layer(kx: number, sx: number): { back: number; through: number } {
  const pair = new Float64Array(2);
  writeLayerSample(kx, sx, pair, 0);
  return { back: pair[0] as number, through: pair[1] as number };
}

const over = (kx: number, sx: number, ground: number): number =>
  layOver(
    paintLayer(flat(kx), flat(sx), 1),
    flat(ground),
    new Float64Array(spectrumSize),
  )[7] as number;

describe('Kubelka-Munk', () => {
  // Kubelka (1948); the numbers were computed twice, in closed form and by Runge-Kutta.
  it.each(publishedKubelkaMunk.computed_two_ways)('KX $KX SX $SX over $Rg', (row) => {
    const { back, through } = layer(row.KX, row.SX);
    expect(back).toBeCloseTo(row.layerR, 8);
    expect(through).toBeCloseTo(row.layerT, 8);
    expect(over(row.KX, row.SX, row.Rg)).toBeCloseTo(row.overGround, 8);
  });

  /** Reflectance of a layer so thick that no ground shows, from K/S. */
  const masstone = (ratio: number): number => over(800 * ratio, 800, 0.5);

  // Kubelka and Munk (1931): exact arithmetic, tabulated in colour texts.
  it.each(publishedKubelkaMunk.published_K_over_S.pairs.filter(([, ratio]) => Number(ratio) > 0))(
    'a thick layer of R %f has K/S %f',
    (r, ratio) => {
      expect(masstone(ratio as number)).toBeCloseTo(r as number, 8);
    },
  );

  // spectral.js 3.0.0 (van Wijnen, MIT), its K/S of a reflectance only; its mixing goes ways of its own.
  it('agrees with an independent K/S from nearly black to nearly white', () => {
    const reflectances = Array.from({ length: 38 }, (_, i) => 0.0005 + (0.97 * i) / 37);
    const { KS } = new Color(reflectances);
    for (const [i, r] of reflectances.entries()) {
      expect(Math.abs(masstone(KS[i] as number) - r)).toBeLessThan(1e-12);
    }
  });

  // Unit-test constants of an MIT-licensed colour library (see the fixture), two-constant mixing.
  it.each(publishedKubelkaMunk.third_party_checked_numbers.two_constant.mixes)(
    'mixes $w',
    ({ w, Rinf }) => {
      const { K, S } = publishedKubelkaMunk.third_party_checked_numbers.two_constant;
      const padded = (row: number[]): number[] => Array.from(flat(1), (one, i) => row[i] ?? one);
      const paints = K.map((row, i) => ({ K: padded(row), S: padded(S[i] as number[]) }));
      const mixed = mixSpectra(paints, w);
      for (const [i, wanted] of Rinf.entries()) {
        const thick = layOver(paintLayer(mixed.K, mixed.S, 400), flat(0.5), new Float64Array(36));
        expect(thick[i]).toBeCloseTo(wanted, 9);
      }
    },
  );

  it('holds T^2 = (a - R0)^2 - b^2 (Kubelka 1948)', () => {
    for (const kx of [0.01, 0.3, 2]) {
      for (const sx of [0.02, 0.4, 3]) {
        const { back, through } = layer(kx, sx);
        const a = 1 + kx / sx;
        expect(through ** 2).toBeCloseTo((a - back) ** 2 - (a * a - 1), 9);
      }
    }
  });

  it('two thin layers, one on the other, are the thick one (Kubelka 1954)', () => {
    const upper = layer(0.7 * 1.5, 0.3 * 1.5);
    const lower = layer(0.7 * 0.5, 0.3 * 0.5);
    const once = layer(0.7 * 2, 0.3 * 2);
    const between = reflectionsBetween(upper.back, lower.back);
    expect(reflectanceOver(upper.back, upper.through, lower.back)).toBeCloseTo(once.back, 12);
    expect((upper.through * lower.through) / between).toBeCloseTo(once.through, 12);
  });

  it('a wash laid over a wash is the thick one over their ground', () => {
    const [K, S] = [flat(0.7), flat(0.3)];
    const sheet = layOver(paintLayer(K, S, 0.5), flat(0.85), new Float64Array(spectrumSize));
    layOver(paintLayer(K, S, 1.5), sheet, sheet);
    expect(sheet[3]).toBeCloseTo(over(1.4, 0.6, 0.85), 12);
  });

  it('is the textbook masstone from K/S 1e-12 to 1e12 and falls throughout (A-NUM-12)', () => {
    let before = 2;
    for (let power = -12; power <= 12; power += 0.5) {
      const k = 10 ** power;
      // Thick enough for no ground to show, whatever K/S is.
      const sx = 40 / Math.sqrt(k * (k + 2));
      const r = over(k * sx, sx, 0.5);
      // The reciprocal of 1 + k + sqrt(k^2 + 2 k) keeps the digits that 1 + k - sqrt(k^2 + 2 k) loses.
      expect(Math.abs(r * (1 + k + Math.sqrt(k * (k + 2))) - 1)).toBeLessThan(1e-12);
      expect(r).toBeLessThan(before);
      before = r;
    }
  });

  it('has no NaN at S 0, K 0, load 0 or a huge load (A-NUM-13)', () => {
    expect(over(0.4, 0, 1)).toBeCloseTo(Math.exp(-0.8), 12);
    expect(over(0, 0.5, 0.6)).toBeCloseTo(0.4 / 0.6, 12);
    expect(over(0, 0, 0.6)).toBe(0.6);
    expect(over(0, 0, 1)).toBe(1);
    expect(over(0, 1e18, 1)).toBeCloseTo(1, 9);
    // b S X = 800 with K/S = 1.
    const sx = 800 / Math.sqrt(3);
    expect(over(sx, sx, 0.9)).toBeCloseTo(1 / (2 + Math.sqrt(3)), 12);
    for (const kx of [0, 1e-300, 1e-9, 1, 1e9, 1e150]) {
      for (const depth of [0, 1e-300, 1e-9, 1, 1e9, 1e150]) {
        for (const ground of [0, 0.5, 1]) {
          const r = over(kx, depth, ground);
          expect(r, `${kx} ${depth} ${ground}`).toBeGreaterThanOrEqual(0);
          expect(r, `${kx} ${depth} ${ground}`).toBeLessThanOrEqual(1 + 1e-12);
        }
      }
    }
  });

  it('mixes a paint that is dead black or perfectly white at some wavelengths (A-NUM-11)', () => {
    const odd = [1e9, 0];
    const K = Array.from(flat(0), (_, i) => odd[i % 2] as number);
    const plain = { K: flat(0.3), S: flat(0.1) };
    for (const share of [0, 1, 500, 1000]) {
      const mix = mixSpectra([{ K, S: flat(1) }, plain], [share, 1000 - share]);
      const got = layOver(paintLayer(mix.K, mix.S, 1), flat(0.85), new Float64Array(36));
      expect(Array.from(got).every((r) => r >= 0 && r <= 1)).toBe(true);
      if (share === 0) expect(Array.from(mix.K)).toEqual(plain.K);
    }
  });
});

/**
 * R at the top of a layer by the differential equation itself, dR/dX = S - 2 (K + S) R + S R^2,
 * R(0) = Rg: Kubelka and Munk (1931). Classical Runge-Kutta of fourth order, 4000 steps.
 */
function integrated(kx: number, sx: number, ground: number): number {
  const slope = (r: number): number => sx - 2 * (kx + sx) * r + sx * r * r;
  const steps = 4000;
  const h = 1 / steps;
  let r = ground;
  for (let n = 0; n < steps; n++) {
    const k1 = slope(r);
    const k2 = slope(r + (h * k1) / 2);
    const k3 = slope(r + (h * k2) / 2);
    const k4 = slope(r + h * k3);
    r += (h * (k1 + 2 * k2 + 2 * k3 + k4)) / 6;
  }
  return r;
}

describe('closed form against the differential equation', () => {
  for (const kx of [0, 0.01, 0.3, 2, 10]) {
    for (const sx of [0, 0.02, 0.5, 3, 12]) {
      it(`KX ${kx}, SX ${sx}: within 1e-9 over every ground`, () => {
        const layer = paintLayer(
          new Float64Array(spectrumSize).fill(kx),
          new Float64Array(spectrumSize).fill(sx),
          1,
        );
        for (const ground of [0, 0.012, 0.4, 0.85, 1]) {
          const paper = new Float64Array(spectrumSize).fill(ground);
          const [closed] = layOver(layer, paper, new Float64Array(spectrumSize));
          expect(Math.abs((closed as number) - integrated(kx, sx, ground))).toBeLessThan(1e-9);
        }
      });
    }
  }
});
