import { expect, test } from 'vitest';
import { stripRows, turnStrip } from '../../../../app/core/raster/turn-rows.ts';

// Outside figures: none; a turned plane is the plane with rows and columns exchanged.
const planeOf = (width: number, height: number): Float32Array =>
  Float32Array.from({ length: width * height }, (_, i) => i + 1);

function turned(plane: Float32Array, width: number, height: number): Float32Array {
  const out = new Float32Array(plane.length);
  for (let top = 0; top < height; top += stripRows) {
    const rows = Math.min(stripRows, height - top);
    const strip = plane.slice(top * width, (top + rows) * width);
    turnStrip(strip, rows, width, out, height, top);
  }
  return out;
}

test.each([
  [1, 1],
  [5, stripRows],
  [7, 2 * stripRows + 3],
  [stripRows, 1],
])('rows of a plane of %i by %i become its columns', (width, height) => {
  const out = turned(planeOf(width, height), width, height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) expect(out[x * height + y]).toBe(y * width + x + 1);
  }
});

test('turned twice a plane is as it was', () => {
  const plane = planeOf(13, 21);
  expect(turned(turned(plane, 13, 21), 21, 13)).toEqual(plane);
});
