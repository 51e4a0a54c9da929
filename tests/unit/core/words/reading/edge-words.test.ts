import { expect, test } from 'vitest';
import type { Slot } from '../../../../../app/core/reading/slot.ts';
import { placeInWords } from '../../../../../app/core/words/places.ts';
import { edgeSentences, wishCaution } from '../../../../../app/core/words/reading/edge-words.ts';
import { keptReading } from '../../../../support/reading/kept-reading.ts';
import { uprightEdge } from '../../../../support/reading/made-edge.ts';

const slot = (band: number, family: number, lightness: number, reserve = false): Slot => ({
  ...(keptReading.slots[0] as Slot),
  band,
  family,
  lab: [lightness, 0, 0],
  reserve,
});
const band = keptReading.bands[0];
if (!band) throw new Error('no band');
const reading = {
  slots: [slot(1, 1, 95, true), slot(2, 1, 70), slot(3, 2, 30), slot(3, 2, 31)],
  bands: [band, band, band],
  families: [
    { id: 1, lab: [70, 0, 0], share: 0.5, name: 'dull green' },
    { id: 2, lab: [30, 0, 0], share: 0.5, name: 'brown' },
  ],
} as const;

test('kind, difference with its direction, width on the sheet, length', () => {
  const edge = uprightEdge(0.5, {
    a: 1,
    b: 2,
    contrast: 21,
    widthMm: 3.2,
    kind: 'soft',
    lengthMm: 118,
  });
  expect(edgeSentences(edge, reading)).toEqual([
    'A soft edge: clear, but blurred.',
    'Difference 2.1 values: the mid dull green is lighter than the dark brown.',
    'It changes over 3 mm on your sheet and is 12 cm long.',
  ]);
  const white = uprightEdge(0.5, { a: 0, b: 2, widthMm: 0 });
  expect(edgeSentences(white, reading).slice(1)).toEqual([
    'Difference 3 values: the white is lighter than the dark brown.',
    'It changes over less than half a millimetre on your sheet and is 40 mm long.',
  ]);
});

test('no direction where the difference is hardly there, or the sides have one name', () => {
  const lost = uprightEdge(0.5, { a: 1, b: 2, contrast: 2, kind: 'lost' });
  expect(edgeSentences(lost, reading).slice(1)).toEqual([
    'Difference 0.2 values.',
    'It is 40 mm long.',
  ]);
  const alike = uprightEdge(0.5, { a: 2, b: 3, contrast: 12 });
  expect(edgeSentences(alike, reading)[1]).toBe('Difference 1.2 values.');
});

test('each flag has its sentence', () => {
  const flags = { graded: true, heldByColour: true, outOfFocus: true };
  const said = edgeSentences(uprightEdge(0.5, { a: 1, b: 2, ...flags }), reading).slice(3);
  expect(said).toHaveLength(3);
  expect(said[0]).toContain('graded wash');
  expect(said[1]).toContain('Same value');
  expect(said[2]).toContain('the lens may have made it soft');
});

test('a wish against what is measured is told', () => {
  expect(wishCaution(uprightEdge(0.5, { contrast: 32 }), 'lose')).toContain('3.2 values apart');
  expect(wishCaution(uprightEdge(0.5, { contrast: 3 }), 'sharpen')).toContain(
    'make one of them darker',
  );
  expect(wishCaution(uprightEdge(0.5, { contrast: 8 }), 'lose')).toBe('');
  expect(wishCaution(uprightEdge(0.5), 'soften')).toBe('');
});

test('places by thirds', () => {
  expect(
    (
      [
        [0.1, 0.1],
        [0.9, 0.9],
        [0.5, 0.5],
        [0.5, 0.1],
        [0.5, 0.9],
        [0.1, 0.5],
      ] as const
    ).map(placeInWords),
  ).toEqual([
    'upper left',
    'lower right',
    'in the middle',
    'at the top',
    'at the bottom',
    'on the left',
  ]);
});
