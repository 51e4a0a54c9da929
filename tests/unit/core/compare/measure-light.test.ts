import { expect, test } from 'vitest';
import { type Lab, linearOfLab } from '../../../../app/core/colour/lab.ts';
import { measureLight } from '../../../../app/core/compare/measure-light.ts';
import { sensed, unsensed } from '../../../../app/core/paint/measure/camera.ts';
import { emptyRaster, type LabPlanes } from '../../../../app/core/raster/linear-raster.ts';
import { castOver, type Three } from '../../../support/compare/lamp.ts';

// A sheet in 24 squares, photographed by the tests' own means, within the 2 L* that is asked (own).
const paper: Lab = [95.5, 0.3, 1.7];
const blue: Lab = [49, 3, -32];
const colours: readonly Lab[] = [paper, blue, [70, 8, 35], [35, 1, 17], [31, 4, -8], [68, 0, -20]];
const size = { width: 360, height: 240 };
const squarePx = 60;
const colourAt = (i: number): Lab => {
  const [x, y] = [i % size.width, Math.floor(i / size.width)];
  return colours[(Math.floor(x / squarePx) + 2 * Math.floor(y / squarePx)) % colours.length] as Lab;
};

const slotMap = Uint8Array.from({ length: size.width * size.height }, (_, i) =>
  colours.indexOf(colourAt(i)),
);

/** What is measured of the blue, by the light on the sheet that is found. */
async function blueUnder(lamp: (light: Three) => Three): Promise<number> {
  const count = size.width * size.height;
  const raster = emptyRaster(size.width, size.height);
  const [lightness, a, b] = [0, 1, 2].map((c) =>
    Float32Array.from({ length: count }, (_, i) => colourAt(i)[c as 0] as number),
  ) as [Float32Array, Float32Array, Float32Array];
  const expected: LabPlanes = { lightness, a, b };
  for (let i = 0; i < count; i++) {
    const seen = lamp([...linearOfLab(colourAt(i))]);
    for (const [c, plane] of [raster.red, raster.green, raster.blue].entries())
      plane[i] = 0.6 * (seen[c] as number);
  }
  const squared = { raster, margin: 0, size };
  const found = await measureLight(squared, expected, slotMap, paper, undefined, async () => {});
  if (!found) throw new Error('no light');
  const { measured } = found;
  let [sum, all] = [0, 0];
  for (let i = 0; i < count; i++) {
    if (colourAt(i) !== blue) continue;
    sum += measured.lightness[i] as number;
    all++;
  }
  return sum / all;
}

test.each([2700, 3500, 8000])(
  'deep blue keeps its lightness by the light of %d K',
  async (kelvin) => {
    expect(Math.abs((await blueUnder(castOver(kelvin))) - blue[0])).toBeLessThan(2);
  },
);

test('and where the camera took another white', async () => {
  const found = await blueUnder((light) => {
    const [red, green, rest] = sensed(light);
    return [...unsensed([1.3 * red, green, 0.6 * rest])];
  });
  expect(Math.abs(found - blue[0])).toBeLessThan(2);
});
