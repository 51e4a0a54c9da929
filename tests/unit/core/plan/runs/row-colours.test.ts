import { expect, it } from 'vitest';
import { rgbOfLab } from '../../../../../app/core/colour/lab.ts';
import { labOfReflectance, spectrumSize } from '../../../../../app/core/colour/spectrum.ts';
import { defaultPaper, defaultPaperLab } from '../../../../../app/core/paint/colour-of-washes.ts';
import { RowColours } from '../../../../../app/core/plan/runs/row-colours.ts';

const squares = {
  across: 2,
  down: 1,
  sidePx: 4,
  slots: [0, 0, 1],
  squares: [0, 1, 1],
  shares: [1, 0.5, 0.5],
  colours: [0, 0, 0, 0, 0, 0, 0, 0, 0],
};
const light = new Float64Array(3 * spectrumSize);
for (const row of [0, 1, 2]) light.set(defaultPaper, row * spectrumSize);

// Held against `labOfReflectance` row by row (own).
it('looks at what was laid, and leaves the rest as it was', () => {
  const colours = new RowColours(squares, 3);
  expect(colours.slotMeans(light)).toEqual([defaultPaperLab, defaultPaperLab, null]);
  const grey = new Float64Array(spectrumSize).fill(0.2);
  const dark = labOfReflectance(grey);
  const painted = light.slice();
  painted.set(grey, spectrumSize);
  colours.change(1);
  const [mixed, paper] = colours.slotMeans(painted);
  expect(mixed?.[0]).toBeCloseTo((defaultPaperLab[0] + 0.5 * dark[0]) / 1.5, 9);
  expect(paper).toEqual(defaultPaperLab);
  const table = colours.table();
  expect([...table.subarray(3, 6)]).toEqual([...rgbOfLab(dark)].map(Math.round));
  expect([...table.subarray(0, 3)]).toEqual([...table.subarray(6, 9)]);
});
