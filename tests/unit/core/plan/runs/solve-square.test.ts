import { describe, expect, it } from 'vitest';
import { colourDifference } from '../../../../../app/core/colour/ciede2000.ts';
import { labOfReflectance } from '../../../../../app/core/colour/spectrum.ts';
import {
  defaultPaper,
  reflectanceOfWashes,
} from '../../../../../app/core/paint/colour-of-washes.ts';
import { mixSpectra } from '../../../../../app/core/paint/layer.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { SquareSolver, writeLayers } from '../../../../../app/core/plan/runs/solve-square.ts';

const paint = (id: string) => {
  const found = paintBox.find((each) => each.id === id);
  if (!found) throw new Error(id);
  return found;
};
const blue = paint('pb29-ultramarine-blue');
const sienna = paint('pbr7-burnt-sienna');
const spectra = [mixSpectra([blue], [1]), mixSpectra([sienna], [1])];
const paper = { reflectance: defaultPaper, lightness: labOfReflectance(defaultPaper)[0] };

function colourOf(one: number, two: number, underneath: Float64Array = defaultPaper) {
  const out = new Float64Array(36);
  writeLayers(spectra, one, two, underneath, out, new Float64Array(2));
  return labOfReflectance(out);
}

function solved(
  target: readonly [number, number, number],
  most: number,
  puddles = spectra,
  underneath = paper,
) {
  const solver = new SquareSolver();
  solver.amounts.set([1, puddles.length > 1 ? 1 : 0]);
  solver.solve(puddles, underneath, [...target], most);
  const [one = 0, two = 0] = solver.amounts;
  return { one, two };
}

describe('amounts of puddles in a square', () => {
  it.each([
    [0.5, 0],
    [3, 1],
    [1, 4],
    [6, 2],
  ])('finds %f and %f again from the colour they make', (one, two) => {
    const found = solved(colourOf(one, two), 20);
    expect(colourDifference(colourOf(found.one, found.two), colourOf(one, two))).toBeLessThan(0.3);
  });

  it('finds the strength of one puddle', () => {
    const target = colourOf(4, 0);
    const found = solved(target, 20, spectra.slice(0, 1));
    expect(found.one).toBeCloseTo(4, 1);
    expect(found.two).toBe(0);
  });

  it('keeps within the most that may be laid', () => {
    const found = solved([20, 0, 0], 5);
    expect(found.one + found.two).toBeLessThanOrEqual(5 + 1e-9);
    expect(found.one + found.two).toBeCloseTo(5, 3); // as dark as may be
  });

  it('never less than nothing: a paint that only hurts stays out', () => {
    const found = solved(colourOf(3, 0), 20);
    expect(found.two).toBeGreaterThanOrEqual(0);
    expect(found.two).toBeLessThan(0.1);
  });

  it('reckons over what lies there', () => {
    const washed = reflectanceOfWashes([{ paints: [sienna], parts: [1], load: 3 }]);
    const underneath = { reflectance: washed, lightness: labOfReflectance(washed)[0] };
    const target = colourOf(2, 0, washed);
    const found = solved(target, 20, spectra.slice(0, 1), underneath);
    expect(found.one).toBeCloseTo(2, 1);
  });
});
