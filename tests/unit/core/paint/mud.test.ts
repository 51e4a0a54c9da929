import { expect, it } from 'vitest';
import {
  colourOfWashes,
  defaultPaper,
  loadForLightness,
} from '../../../../app/core/paint/colour-of-washes.ts';
import { mixSpectra } from '../../../../app/core/paint/layer.ts';
import { chromaKept, mudOf, pigmentsIn } from '../../../../app/core/paint/mud.ts';
import type { Paint } from '../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';
import { mudInWords } from '../../../../app/core/words/paint/mix-words.ts';

const named = (id: string): Paint => paintBox.find((paint) => paint.id === id) as Paint;
const mixOf = (one: string, two: string, parts = [1, 1], load = 4) => ({
  paints: [named(one), named(two)],
  parts,
  load,
});
/** What is said of a mix; null where it is no mud. */
const said = (...[mix, target, expected]: Parameters<typeof mudOf>): string | null => {
  const mud = mudOf(mix, target, expected);
  return mud && mudInWords(mud);
};
const muddy = mixOf('pb29-ultramarine-blue', 'pbr7-burnt-sienna', [2, 3]);
const clean = mixOf('pb29-ultramarine-blue', 'pv19-quinacridone-red');

it('finds the load for a lightness, over paper and over a wash; says where there is none', () => {
  const blue = named('pb29-ultramarine-blue');
  for (const lightness of [90, 60, 35]) {
    const load = loadForLightness(mixSpectra([blue], [1]), defaultPaper, lightness) as number;
    expect(colourOfWashes([{ paints: [blue], parts: [1], load }])[0]).toBeCloseTo(lightness, 2);
  }
  expect(loadForLightness(mixSpectra([blue], [1]), defaultPaper, 99)).toBeNull();
  const lemon = mixSpectra([named('hue-lemon-yellow')], [1]);
  expect(loadForLightness(lemon, defaultPaper, 20)).toBeNull();
});

// That complements dull and neighbours stay clean: common practice, no source; the two shares are (own).
it('complements lose most of their colour, neighbours keep it', () => {
  const lost = chromaKept(muddy);
  expect(lost.mixed).toBeLessThan(0.4 * lost.own);
  const kept = chromaKept(clean);
  expect(kept.mixed).toBeGreaterThan(0.6 * kept.own);
});

it('calls mud only what was meant as colour', () => {
  const got = colourOfWashes([muddy]);
  expect(said(muddy, [got[0], 30, 30], got)).toMatch(/^Mixed, these paints lose most/);
  expect(said(muddy, [got[0], 1, 1], got)).toBeNull();
  expect(said(muddy, null, got)).toBeNull();
  // Over a first wash that keeps the colour: two thirds of it are there.
  expect(said(muddy, [got[0], 0, -30], [got[0], 0, -20])).toBeNull();
  const bright = colourOfWashes([clean]);
  expect(said(clean, [bright[0], 60, 60], bright)).toBeNull();
  const alone = { paints: [named('pbr7-burnt-umber')], parts: [1], load: 4 };
  expect(said(alone, [40, 60, 60], colourOfWashes([alone]))).toBeNull();
});

it('counts pigments by their Colour Index names, each once', () => {
  const tube = (id: string, ci: string[]): Paint => ({ ...named('pb29-ultramarine-blue'), id, ci });
  const hooker = tube('own-1', ['PG7', 'PY83', 'PR101']);
  const grey = tube('own-2', ['PB29', 'PBk9', 'PG7']);
  expect(pigmentsIn([hooker, grey])).toBe(5);
  expect(pigmentsIn([tube('own-3', []), tube('own-4', [])])).toBe(2);
  const mix = { paints: [hooker, grey], parts: [1, 1], load: 2 };
  expect(said(mix, null, [50, 0, 0])).toMatch(/^Five pigments are in this mix/);
  const three = { paints: [hooker], parts: [1], load: 2 };
  expect(said(three, null, [50, 0, 0])).toBeNull();
});
