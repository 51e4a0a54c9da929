import { useMode as addMode, converter, modeLab65, modeRgb } from 'culori/fn';
import { expect, test } from 'vitest';
import { lightToLab } from '../../../app/drawing/light-to-lab.ts';
import { lightOfCode } from '../../../app/drawing/linear-light.ts';
import { meanColour, type Pixels } from '../../../app/drawing/mean-colour.ts';
import { spotColours } from '../../../app/drawing/spot-colours.ts';

addMode(modeLab65);
addMode(modeRgb);
const toLab = converter('lab65');

function picture(
  width: number,
  height: number,
  rgb: (x: number, y: number) => readonly [number, number, number],
): Pixels {
  const data = new Uint8ClampedArray(width * height * 4).fill(255);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) data.set(rgb(x, y), (y * width + x) * 4);
  return { data, width, height };
}

test('colours are those of culori lab65', () => {
  for (let i = 0; i < 512; i++) {
    const [r, g, b] = [(i * 73) % 256, (i * 151) % 256, (i * 29) % 256];
    const light = (code: number): number => lightOfCode[code] as number;
    const [l, a, blue] = lightToLab(light(r), light(g), light(b));
    const theirs = toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
    expect(Math.hypot(l - theirs.l, a - theirs.a, blue - theirs.b)).toBeLessThan(0.02); // its white has one digit more
  }
});

test('a fine black and white check is L* 76: light is averaged, not codes', () => {
  const check = picture(40, 40, (x, y) => ((x + y) % 2 ? [0, 0, 0] : [255, 255, 255]));
  expect(meanColour(check, 20, 20, 9)[0]).toBeGreaterThan(75);
  expect(meanColour(check, 20, 20, 9)[0]).toBeLessThan(77);
});

test('a disc holds its own pixels and no others', () => {
  const dot = picture(21, 21, (x, y) =>
    Math.hypot(x - 10, y - 10) <= 4 ? [255, 255, 255] : [0, 0, 0],
  );
  expect(meanColour(dot, 10.5, 10.5, 4)[0]).toBeCloseTo(100, 3);
  expect(meanColour(dot, 10.5, 10.5, 6)[0]).toBeLessThan(90);
  expect(meanColour(dot, 1, 1, 3)[0]).toBe(0);
});

test('at corners, beyond them and in a one-pixel picture there is still a colour', () => {
  const one = picture(1, 1, () => [119, 119, 119]);
  for (const [x, y] of [
    [0, 0],
    [-30, 5],
    [1, 1],
  ] as const)
    expect(meanColour(one, x, y, 3)[0]).toBeCloseTo(50, 0);
  expect(spotColours(one, [1, 0], 4.2).grid.flat().every(Number.isFinite)).toBe(true);
});

test('a spot stands in the middle of its neighbours, each on its own side', () => {
  const halves = picture(200, 100, (x) => (x < 100 ? [0, 0, 0] : [255, 255, 255]));
  const { lab, grid } = spotColours(halves, [0.52, 0.5], 4);
  expect(lab[0]).toBeCloseTo(100, 3);
  for (const row of [0, 3, 6]) {
    expect(grid[row]?.[0]).toBeCloseTo(0, 3);
    expect(grid[row + 2]?.[0]).toBeCloseTo(100, 3);
  }
  expect(grid[4]).toEqual(lab);
});
