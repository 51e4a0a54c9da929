import { expect, test } from 'vitest';
import type { Outline } from '../../../../app/core/outline/outline.ts';
import { outlineGrid } from '../../../../app/core/outline/outline-grid.ts';
import { gridData, gridNames, outlineSvg } from '../../../../app/core/outline/outline-svg.ts';

const outline: Outline = {
  widthMm: 400,
  heightMm: 300,
  grid: outlineGrid({ widthMm: 400, heightMm: 300 }),
  lines: [
    {
      kind: 'hard',
      role: 'outer',
      points: [
        [10, 20],
        [30.123456, 40],
      ],
    },
    {
      kind: 'soft',
      role: 'outer',
      points: [
        [50, 20],
        [60, 40],
      ],
    },
    {
      kind: 'hard',
      role: 'inner',
      points: [
        [70, 20],
        [80, 40],
      ],
    },
  ],
};
const all = { grid: true, soft: true, inner: true };
const file = outlineSvg(outline, all);

test('one unit is one millimetre, the file says its size in mm', () => {
  expect(file).toMatch(
    /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg" width="400mm" height="300mm" viewBox="0 0 400 300">/,
  );
  expect(file).toContain('d="M10 20L30.12 40"');
});

test('soft edges are dots, hard ones a full line', () => {
  const paths = file.split('\n').filter((line) => line.includes('d="M'));
  expect(paths.find((line) => line.includes('M50 20'))).toContain('stroke-dasharray');
  expect(paths.find((line) => line.includes('M10 20'))).not.toContain('stroke-dasharray');
});

test('every colour in it is neutral', () => {
  for (const [, red, green, blue] of file.matchAll(/#(.)(.)(.)"/g))
    expect([green, blue]).toEqual([red, red]);
});

test('what she does not want to see is not in it', () => {
  expect(outlineSvg(outline, { ...all, soft: false })).not.toContain('M50 20');
  expect(outlineSvg(outline, { ...all, inner: false })).not.toContain('M70 20');
  expect(outlineSvg(outline, { ...all, grid: false })).not.toContain('<text');
  expect(file.match(/<text/g)).toHaveLength(12); // 4 x 3 squares, each with its name
  expect(file).toContain('>C4</text>');
});

test('squares are named row by row at their upper left, their lines run over the whole sheet', () => {
  const names = gridNames(outline);
  // 100 mm a square.
  expect(names.map(({ text }) => text).join(' ')).toBe('A1 A2 A3 A4 B1 B2 B3 B4 C1 C2 C3 C4');
  for (const { text, x, y } of names) {
    const [left, top] = [100 * (Number(text[1]) - 1), 100 * 'ABC'.indexOf(text[0] ?? '')];
    // Letters of 3.2 mm, 1 mm below the line (own).
    expect([x, y]).toEqual([left + 1.2, top + 4.2]);
  }
  expect(gridData(outline)).toBe('M100 0V300M200 0V300M300 0V300M0 100H400M0 200H400');
});
