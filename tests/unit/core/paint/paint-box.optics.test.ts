import { sampleRankCorrelation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { luminanceOfLightness } from '../../../../app/core/colour/lightness.ts';
import {
  labOfReflectance,
  type Spectrum,
  spectrumSize,
} from '../../../../app/core/colour/spectrum.ts';
import { drySurface, inside } from '../../../../app/core/colour/surface.ts';
import {
  colourOfWashes,
  defaultPaperLab,
  reflectanceOfWashes,
} from '../../../../app/core/paint/colour-of-washes.ts';
import { wholeParts } from '../../../../app/core/paint/mix.ts';
import { type Paint, strengthOf } from '../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';
import published from '../../../fixtures/masstone-checks.json';
import predicted from '../../../fixtures/predicted-ladders.json';

const meanOf = (all: readonly number[]): number =>
  all.reduce((sum, one) => sum + one, 0) / all.length;

const named = (id: string): Paint => {
  const found = paintBox.find((paint) => paint.id === id);
  if (!found) throw new Error(`no paint ${id}`);
  return found;
};

describe('the built-in paints', () => {
  /** So many loads of the optics table, over the paper or something else. */
  const lab = (paint: Paint, loads: number, ground?: Spectrum): Lab => {
    const wash = { paints: [paint], parts: [1], load: loads / strengthOf(paint) };
    return labOfReflectance(reflectanceOfWashes([wash], ground));
  };
  const furthest = (one: Lab, two: readonly number[]): number =>
    Math.max(...one.map((value, i) => Math.abs(value - (two[i] as number))));

  it('have the ladders computed where the table was made, all at all loads', () => {
    expect(predicted.rows).toHaveLength(102);
    let worst = 0;
    for (const { paint, ladder } of predicted.rows) {
      expect(ladder).toHaveLength(9);
      for (const step of ladder) {
        worst = Math.max(worst, furthest(lab(named(paint), step.load), step.lab));
      }
    }
    expect(worst).toBeLessThan(0.05);
    expect(defaultPaperLab[0]).toBeCloseTo(94.64, 2);
  });

  // The fixture does not state its black line nor how far the darkest was sought: reflectance 0.06 and load 1000 fit all.
  it('have its masstones, its darkest, and its rise over a black line', () => {
    const black = new Float64Array(spectrumSize).fill(inside(0.06, drySurface));
    for (const { paint: id, masstone } of predicted.rows) {
      const paint = named(id);
      const most = paint.mostLoad as number;
      // Its load is stated to one decimal, as are L*, a*, b*: the whites have few loads.
      const rounded = furthest(lab(paint, most + 0.05), lab(paint, most - 0.05)) / 2 + 0.06;
      expect(furthest(lab(paint, most), masstone.lab), id).toBeLessThan(rounded);
      const rise = lab(paint, most, black)[0] - labOfReflectance(black)[0];
      expect(Math.abs(rise - masstone.overBlackL), id).toBeLessThan(0.15);
      let darkest = 100;
      for (let loads = most; loads <= 1000; loads *= 1.05) {
        darkest = Math.min(darkest, lab(paint, loads)[0]);
      }
      expect(Math.abs(darkest - masstone.darkestL), id).toBeLessThan(0.2);
    }
  });

  // MacEvoy, B., Guide to watercolor pigments (tests of 1998 and 2004): value range is 97.2 less L* of the masstone.
  it('are as dark at full strength as 25 published value ranges say: within a mean of 3 L*', () => {
    const off = published.checks.map(({ paint, valueRange }) => {
      const { mostLoad = 0 } = named(paint);
      return Math.abs(lab(named(paint), mostLoad)[0] - (97.2 - valueRange));
    });
    console.info(
      `Masstones: mean |dL*| ${meanOf(off).toFixed(2)}, most ${Math.max(...off).toFixed(1)}`,
    );
    expect(off).toHaveLength(25);
    expect(meanOf(off)).toBeLessThan(3);
  });

  // The same source: transparency judged over a black line, 0 opaque to 4 transparent. A line of L* 20 (own).
  it('cover a black line the less the more transparent they are said to be: rank correlation 0.6', () => {
    const black = new Float64Array(spectrumSize).fill(inside(luminanceOfLightness(20), drySurface));
    const cover = published.checks.map(({ paint }) => {
      const { mostLoad = 0 } = named(paint);
      return lab(named(paint), mostLoad, black)[0];
    });
    const clear = published.checks.map(({ transparency0to4 }) => transparency0to4);
    const ranks = sampleRankCorrelation(cover, clear);
    console.info(`Cover by transparency: rank correlation ${ranks.toFixed(2)}`);
    expect(ranks).toBeLessThan(-0.6);
  });

  // Data of the optics table: what was found where it was made. One coat is 20 ml on a square metre.
  it.each(['pbr7-burnt-sienna', 'pbr7-burnt-umber'])(
    'ultramarine with %s reaches L* 26 in one full coat, less in two',
    (brown) => {
      const paints = [named('pb29-ultramarine-blue'), named(brown)];
      const darkestOf = (coats: number): number =>
        Math.min(
          ...wholeParts(2).map((parts) => {
            const wash = { paints, parts, load: 20 };
            return colourOfWashes(Array.from({ length: coats }, () => wash))[0];
          }),
        );
      expect(Math.abs(darkestOf(1) - 26)).toBeLessThan(1);
      expect(darkestOf(2)).toBeLessThan(darkestOf(1) - 1);
    },
  );
});
