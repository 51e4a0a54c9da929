import { expect, it } from 'vitest';
import { colourOfWashes } from '../../../../app/core/paint/colour-of-washes.ts';
import { mixingChart } from '../../../../app/core/paint/mixing-chart.ts';
import type { Paint } from '../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';

const palette = [
  'py74-arylide-yellow',
  'pv19-quinacridone-red',
  'pb29-ultramarine-blue',
  'pbr7-burnt-sienna',
  'pg7-phthalocyanine-green',
].map((id) => paintBox.find((paint) => paint.id === id) as Paint);
const chart = mixingChart(palette);
const all = chart.pairs.flatMap(({ ratios }) => ratios.flat());

// Limits and figures are (own): the docstrings of what is tested say why.
it('has every pair once, three ratios, three strengths', () => {
  expect(new Set(chart.pairs.map(({ paints }) => [...paints].sort().join())).size).toBe(10);
  for (const { paints, ratios } of chart.pairs) {
    expect(paints[0]).not.toBe(paints[1]);
    expect(ratios.map((row) => row[0]?.parts.map(({ parts }) => parts))).toEqual([
      [3, 1],
      [1, 1],
      [1, 3],
    ]);
    for (const row of ratios) {
      expect(row.map(({ consistency }) => consistency)).toEqual(['tea', 'milk', 'cream']);
    }
  }
});

it('shows each as it is laid on paper', () => {
  for (const { parts, load, dry } of [...all, ...chart.darks]) {
    const paints = parts.map(({ paint }) => palette.find(({ id }) => id === paint) as Paint);
    const laid = colourOfWashes([{ paints, parts: parts.map((part) => part.parts), load }]);
    for (const i of [0, 1, 2] as const) expect(dry[i]).toBeCloseTo(laid[i], 9);
  }
});

it('finds the darkest mixes, darkest first, a third paint only where it darkens', () => {
  expect(chart.darks.length).toBeGreaterThan(3);
  expect(chart.darks.length).toBeLessThanOrEqual(8);
  const lightness = chart.darks.map(({ dry }) => dry[0]);
  expect(lightness).toEqual([...lightness].sort((one, two) => one - two));
  // The slow way: all pairs in all ratios to 8, one by one.
  let darkest = 100;
  for (const one of palette) {
    for (const two of palette) {
      for (let parts = 1; parts < 8; parts++) {
        const wash = { paints: [one, two], parts: [parts, 8 - parts], load: 24 };
        darkest = Math.min(darkest, colourOfWashes([wash])[0]);
      }
    }
  }
  expect(lightness[0]).toBeLessThanOrEqual(darkest + 0.5);
  for (const { parts, dry } of chart.darks) {
    if (parts.length < 3) continue;
    const own = chart.darks.filter((each) =>
      each.parts.every(({ paint }) => parts.some((part) => part.paint === paint)),
    );
    for (const pair of own) {
      if (pair.parts.length === 2) expect(pair.dry[0]).toBeGreaterThan(dry[0] + 1);
    }
  }
});

it('names the tint of its darks', () => {
  const blueBrown = ['pb29-ultramarine-blue', 'pbr7-burnt-sienna'];
  const darks = mixingChart(palette.filter(({ id }) => blueBrown.includes(id))).darks;
  expect(darks.map(({ tint }) => tint)).toEqual(['cool', 'neutral']);
  for (const { dry } of darks) expect(dry[0]).toBeLessThan(30);
  const bright = ['py74-arylide-yellow', 'pv19-quinacridone-red'];
  expect(mixingChart(palette.filter(({ id }) => bright.includes(id))).darks).toEqual([]);
  expect(mixingChart(palette.slice(0, 1))).toEqual({ pairs: [], darks: [] });
});
