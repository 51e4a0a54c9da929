import { describe, expect, it } from 'vitest';
import { runToEnd } from '../../../../app/core/numeric/run-to-end.ts';
import {
  coarserSquares,
  colourSquares,
  vividColours,
} from '../../../../app/core/reading/colour-squares.ts';
import { rasterOf } from '../../../support/reading/plain-raster.ts';

/** A sheet of 20 x 10 mm at 4 px a mm, its L* rising from 40 at the left to 80 at the right. */
const [width, height, pxPerMm] = [80, 40, 4];

const rising = (colour: (x: number) => readonly [number, number, number]) =>
  rasterOf(width, height, colour);

const squaresOf = (slotMap: Uint8Array, raster: ReturnType<typeof rising>) =>
  runToEnd(colourSquares(slotMap, raster, pxPerMm));

describe('colours of slots, square by square of 5 mm', () => {
  const ramp = rising((x) => [40 + (40 * (x + 0.5)) / width, 0, 0]);

  it('says how a slot runs over the sheet', () => {
    const found = squaresOf(new Uint8Array(width * height), ramp);
    expect([found.across, found.down, found.sidePx]).toEqual([4, 2, 20]);
    expect(found.squares).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
    const lightness = found.squares.map((_, row) => found.colours[3 * row]);
    for (const [n, expected] of [45, 55, 65, 75, 45, 55, 65, 75].entries()) {
      expect(lightness[n]).toBeCloseTo(expected, 1);
    }
    expect(found.shares).toEqual(new Array(8).fill(1));
  });

  it('has a row for every slot in a square, with its share', () => {
    const slotMap = Uint8Array.from({ length: width * height }, (_, i) => (i % width < 30 ? 0 : 1));
    const found = squaresOf(slotMap, ramp);
    const inSecond = found.squares.flatMap((square, row) => (square === 1 ? [row] : []));
    expect(inSecond.map((row) => found.slots[row])).toEqual([0, 1]);
    expect(inSecond.map((row) => found.shares[row])).toEqual([0.5, 0.5]);
  });

  it('hardly heeds the pixels at a border: they are half the neighbour', () => {
    // Slot 0 is L* 40, slot 1 is 90; the 2 px between them are a blurred 65.
    const edge = rising((x) => [x < 29 ? 40 : x < 31 ? 65 : 90, 0, 0]);
    const slotMap = Uint8Array.from({ length: width * height }, (_, i) => (i % width < 30 ? 0 : 1));
    const found = squaresOf(slotMap, edge);
    const row = found.squares.findIndex((square, n) => square === 1 && found.slots[n] === 0);
    expect(found.colours[3 * row]).toBeLessThan(40.6); // a plain mean would be 42.5
  });

  it('takes a texture for as colourful as it looks', () => {
    // Half of it grey, half C* 40: the plain mean is 20, the mean by C* + 12 is 52 x 40 / 64 = 32.5.
    const checked = rising((x) => [60, x % 2 === 0 ? 0 : 40, 0]);
    const found = squaresOf(new Uint8Array(width * height), checked);
    expect(found.colours[1]).toBeCloseTo(32.5, 0);
  });

  it('tells the most colourful tenth of a slot', () => {
    // Ten squares alike in size, C* 1 to 10: the tenth is the last by itself.
    const rows = Array.from({ length: 10 }, (_, n) => n);
    const squares = {
      ...{ across: 10, down: 1, sidePx: 20, slots: rows.map(() => 0), squares: rows },
      ...{ shares: rows.map(() => 1), colours: rows.flatMap((n) => [50 + n, n + 1, 0]) },
    };
    const [vivid, none] = vividColours(squares, 2);
    expect(vivid).toEqual([59, 10, 0]);
    expect(none).toBeUndefined();
  });

  it('brings squares together without moving a colour', () => {
    const slotMap = Uint8Array.from({ length: width * height }, (_, i) => (i % width < 30 ? 0 : 1));
    const fine = squaresOf(slotMap, ramp);
    const coarse = coarserSquares(fine, 2);
    expect([coarse.across, coarse.down, coarse.sidePx]).toEqual([2, 1, 40]);
    expect(coarse.slots).toEqual([0, 1, 1]);
    expect(coarse.squares).toEqual([0, 0, 1]);
    expect(coarse.shares).toEqual([0.75, 0.25, 1]);
    // Slot 0 goes from L* 40 at the left to 55 at its end, slot 1 from there to 80.
    for (const [n, expected] of [47.5, 57.5, 70].entries()) {
      // Pixels at the border of a slot hardly count.
      expect(Math.abs((coarse.colours[3 * n] as number) - expected)).toBeLessThan(1);
    }
  });
});
