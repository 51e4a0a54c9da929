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
  writeLayers(spectra, one, two, underneath, out);
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

  it('lays nothing where nothing may be laid, and leaves the ground as it is', () => {
    const solver = new SquareSolver();
    solver.solve(spectra, paper, [...colourOf(4, 2)], 0);
    expect([...solver.amounts]).toEqual([0, 0]);
    expect(Number.isFinite(solver.cost)).toBe(true);
  });

  it('tells the squared misfit it leaves: L* counts beside its part in the visible difference', () => {
    // 5 L* are left in the dark; a* and b* are as wanted. Seen differences at L* 50 count by SL = 1 (CIE 142, 2001).
    const solver = new SquareSolver();
    const [l, a, b] = colourOf(0, 0);
    solver.solve(spectra, paper, [l - 5, a, b], 0);
    const seen = solver.cost - 25;
    expect(seen).toBeGreaterThan(0);
    expect(seen).toBeLessThan(25); // SL is over 1 far from L* 50
    // Paint only darkens: a target lighter than its ground costs the same as one as much darker, but for SL.
    solver.amounts.fill(0);
    solver.solve(spectra, paper, [l + 2, a, b], 20);
    expect([...solver.amounts].every((amount) => amount < 0.05)).toBe(true);
  });

  it('goes as far with two puddles that are one and the same as with one alone', () => {
    // Of twins only their sum counts: the equations are open, and still it ends at the colour.
    const twins = [spectra[0], spectra[0]] as typeof spectra;
    const found = solved(colourOf(4, 0), 20, twins);
    expect(found.one + found.two).toBeCloseTo(4, 0);
    expect(colourDifference(colourOf(found.one + found.two, 0), colourOf(4, 0))).toBeLessThan(0.3);
  });

  it('reckons over what lies there', () => {
    const washed = reflectanceOfWashes([{ paints: [sienna], parts: [1], load: 3 }]);
    const underneath = { reflectance: washed, lightness: labOfReflectance(washed)[0] };
    const target = colourOf(2, 0, washed);
    const found = solved(target, 20, spectra.slice(0, 1), underneath);
    expect(found.one).toBeCloseTo(2, 1);
  });
});
