import { expect, test } from 'vitest';
import { lightPyramid } from '../../../../app/core/compare/light-pyramid.ts';
import { seenSides } from '../../../../app/core/compare/side-lines.ts';
import { emptyRaster } from '../../../../app/core/raster/linear-raster.ts';

test('a side is seen 4 px off on a sheet 210 px long, of which a fortieth are 5.25', () => {
  // Drawn by the test: a grey sheet 40 px from the left and top of its photo, painted over to every side (own).
  const size = { width: 210, height: 120 };
  const raster = emptyRaster(290, 200);
  for (let i = 0; i < raster.red.length; i++) {
    const [x, y] = [(i % 290) - 40, Math.floor(i / 290) - 40];
    const isSheet = x >= -4 && x < 214 && y >= -4 && y < 124;
    raster.red[i] = raster.green[i] = raster.blue[i] = isSheet ? 0.3 : 0.6;
  }
  const sides = seenSides(lightPyramid(raster), Float64Array.of(1, 0, 40, 0, 1, 40, 0, 0, 1), size);
  for (const lines of sides)
    for (const found of lines[0]?.offsets ?? [0]) expect(Math.abs(found - 4)).toBeLessThan(0.2);
});
