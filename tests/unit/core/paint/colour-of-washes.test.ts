import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import { valueOfLightness } from '../../../../app/core/colour/lightness.ts';
import { colourOfWashes, defaultPaperLab } from '../../../../app/core/paint/colour-of-washes.ts';
import { wholeParts } from '../../../../app/core/paint/mix.ts';
import { coatOf, type Paint } from '../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';

// Facts of the trade: common practice, no source.

const isWhite = (paint: Paint): boolean => paint.ci.some((ci) => ci.startsWith('PW'));
const paintsWith = (start: string): Paint[] =>
  paintBox.filter((paint) => paint.ci.some((ci) => ci.startsWith(start)));
const named = (id: string): Paint => {
  const found = paintBox.find((paint) => paint.id === id);
  if (!found) throw new Error(`no paint ${id}`);
  return found;
};
const alone = (paint: Paint, load: number): Lab =>
  colourOfWashes([{ paints: [paint], parts: [1], load }]);
const half = (one: Paint, two: Paint, load: number): Lab =>
  colourOfWashes([{ paints: [one, two], parts: [1, 1], load }]);
const chroma = ([, a, b]: Lab): number => Math.hypot(a, b);
const hue = ([, a, b]: Lab): number => ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;

describe('trade facts', () => {
  it('more water is lighter; paper is the lightest', () => {
    for (const paint of paintBox.filter((each) => !isWhite(each))) {
      let before = defaultPaperLab[0];
      for (const load of [0.25, 0.5, 1, 2, 4, 8, 16]) {
        const { 0: lightness } = alone(paint, load);
        expect(lightness, `${paint.id} ${load}`).toBeLessThan(before);
        before = lightness;
      }
    }
  });

  it('yellow and blue make green', () => {
    for (const yellow of ['hue-lemon-yellow', 'py74-arylide-yellow', 'py184-bismuth-vanadate']) {
      for (const blue of [
        'pb153-phthalocyanine-blue',
        'pb151-phthalocyanine-blue',
        'pb27-prussian-blue',
      ]) {
        const mixed = half(named(yellow), named(blue), 3);
        expect(hue(mixed), `${yellow} ${blue}`).toBeGreaterThan(110);
        expect(hue(mixed), `${yellow} ${blue}`).toBeLessThan(235);
      }
    }
  });

  it('blue or violet with orange or its neighbour yellow goes dull', () => {
    const blueOrange = half(named('pb29-ultramarine-blue'), named('po73-pyrrole-orange'), 4);
    const violetYellow = half(named('pv23-dioxazine-violet'), named('py83-diarylide-yellow'), 3);
    const siennaBlue = half(named('pb29-ultramarine-blue'), named('pbr7-burnt-sienna'), 4);
    for (const [mixed, one, two] of [
      [blueOrange, 'pb29-ultramarine-blue', 'po73-pyrrole-orange'],
      [violetYellow, 'pv23-dioxazine-violet', 'py83-diarylide-yellow'],
      [siennaBlue, 'pb29-ultramarine-blue', 'pbr7-burnt-sienna'],
    ] as const) {
      const least = Math.min(chroma(alone(named(one), 4)), chroma(alone(named(two), 4)));
      expect(chroma(mixed), `${one} ${two}`).toBeLessThan(least);
    }
  });

  it('a second wash over a dry one is darker, for every transparent paint', () => {
    for (const paint of [
      ...paintsWith('PB'),
      ...paintsWith('PV'),
      ...paintsWith('PG'),
      ...paintsWith('PR'),
    ]) {
      if (/PBk|PG17/.test(paint.ci.join())) continue;
      const wash = { paints: [paint], parts: [1], load: 1 };
      const once = colourOfWashes([wash]);
      const twice = colourOfWashes([wash, wash]);
      expect(twice[0], paint.id).toBeLessThan(once[0] - 1);
    }
  });

  it('light, mid and dark come from one paint by water alone', () => {
    for (const id of [
      'pb29-ultramarine-blue',
      'pb60-indanthrone-blue',
      'pb27-prussian-blue',
      'pbr7-burnt-umber',
    ]) {
      const values = [0.5, 3, 16].map((load) => valueOfLightness(alone(named(id), load)[0]));
      expect(values[0], id).toBeGreaterThan(8);
      expect(values[1], id).toBeGreaterThan(4);
      expect(values[1], id).toBeLessThan(7.5);
      expect(values[2], id).toBeLessThan(4);
    }
  });

  it('three primaries reach orange, green and violet, by hue', () => {
    for (const yellow of ['py74-arylide-yellow', 'hue-cadmium-yellow']) {
      for (const red of ['pv19-quinacridone-red', 'pr122-quinacridone-magenta']) {
        for (const blue of ['pb29-ultramarine-blue', 'pb153-phthalocyanine-blue']) {
          const [y, r, b] = [named(yellow), named(red), named(blue)];
          const reach = (one: Paint, two: Paint, from: number, to: number): boolean =>
            wholeParts(2).some((parts) => {
              const wash = { paints: [one, two], parts, load: 3 };
              const mixed = colourOfWashes([wash]);
              return hue(mixed) > from && hue(mixed) < to && chroma(mixed) > 25;
            });
          // Hues of this project's colour names: orange 50..75, green 115..180, violet 295..330.
          expect(reach(y, r, 50, 75), `orange of ${yellow} and ${red}`).toBe(true);
          expect(reach(y, b, 115, 180), `green of ${yellow} and ${blue}`).toBe(true);
          expect(reach(r, b, 295, 330), `violet of ${red} and ${blue}`).toBe(true);
        }
      }
    }
  });

  it('ultramarine and burnt sienna make a near-black, C* under 6', () => {
    const sienna = named('pbr7-burnt-sienna');
    const greys = wholeParts(2)
      .map((parts) =>
        colourOfWashes([{ paints: [named('pb29-ultramarine-blue'), sienna], parts, load: 20 }]),
      )
      .filter((lab) => chroma(lab) < 6);
    expect(greys.length).toBeGreaterThan(0);
    expect(valueOfLightness(Math.min(...greys.map(([lightness]) => lightness)))).toBeLessThan(3);
  });

  it('complements make a neutral between them: some ratio is far greyer than either', () => {
    for (const [one, two] of [
      ['pb29-ultramarine-blue', 'pbr7-burnt-sienna'],
      ['pb28-cobalt-blue', 'po20-cadmium-orange'],
      ['pg7-phthalocyanine-green', 'pr254-pyrrole-red'],
      ['pv23-dioxazine-violet', 'py83-diarylide-yellow'],
    ] as const) {
      const mixed = Array.from({ length: 63 }, (_, n) =>
        chroma(
          colourOfWashes([{ paints: [named(one), named(two)], parts: [n + 1, 63 - n], load: 4 }]),
        ),
      );
      const alones = [one, two].map((id) => chroma(alone(named(id), 4)));
      expect(Math.min(...mixed), `${one} ${two}`).toBeLessThan(0.4 * Math.min(...alones));
    }
  });

  it('at one strength pale yellow, green and deep blue go from light to dark', () => {
    for (const load of [0.5, 1, 3, 8, 16]) {
      const [yellow, green, blue] = [
        'hue-lemon-yellow',
        'pg36-phthalocyanine-green',
        'pb60-indanthrone-blue',
      ].map((id) => alone(named(id), load)[0]);
      expect(yellow, `${load}`).toBeGreaterThan(green as number);
      expect(green, `${load}`).toBeGreaterThan(blue as number);
    }
  });

  // Two scattering yellows may rise by up to 1 at high load: physics, not a fault.
  it('the water ladder goes steadily darker to full strength', () => {
    for (const paint of paintBox.filter((each) => !isWhite(each))) {
      let darkest = 100;
      for (let load = 0.1; load <= coatOf(paint); load *= 1.3) {
        const { 0: lightness } = alone(paint, load);
        const slack = paint.id.startsWith('py') ? 1 : 1e-9;
        expect(lightness, `${paint.id} ${load}`).toBeLessThanOrEqual(darkest + slack);
        darkest = Math.min(darkest, lightness);
      }
    }
  });
});
