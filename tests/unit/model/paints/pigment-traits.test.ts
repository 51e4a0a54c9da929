import { expect, test } from 'vitest';
import {
  nothingKnown,
  type PigmentTraits,
  traitsOfNames,
  worstProperties,
} from '../../../../app/model/pigment-traits.ts';
import { pigmentTable } from '../../../../workers/kernels/optics/pigment-table.ts';

const clear = {
  transparency: 'T',
  staining: 0,
  granulation: 2,
  lightfastness: 'I',
  caution: null,
} as const;
const dull = {
  transparency: 'SO',
  staining: 2,
  granulation: 0,
  lightfastness: 'III in an old table',
  caution: 'Contains cobalt: check the label.',
} as const;

test('of several pigments the worst of each property counts, every caution once', () => {
  expect(worstProperties([clear, dull, dull])).toEqual({
    transparency: 'SO',
    staining: 2,
    granulation: 2,
    lightfastness: 'III in an old table',
    caution: 'Contains cobalt: check the label.',
  });
  expect(worstProperties([clear])).toEqual(clear);
});

test('what one of them keeps unknown is unknown, unless another is the worst there is', () => {
  const unknown = worstProperties([clear, nothingKnown]);
  expect(unknown).toEqual({ ...nothingKnown, granulation: 2 });
  expect(worstProperties([dull, nothingKnown])).toMatchObject({ transparency: null, staining: 2 });
  expect(worstProperties([])).toEqual(nothingKnown);
});

test('a name without its own row is looked up by its forms', () => {
  const table: PigmentTraits[] = [
    { ci: 'PB15:1', properties: clear },
    { ci: 'PB15:3', properties: dull },
    { ci: 'PY150', properties: clear },
  ];
  expect(traitsOfNames(['PB15:1'], table)).toEqual(clear);
  expect(traitsOfNames(['PB15'], table).transparency).toBe('SO');
  expect(traitsOfNames(['PY150', 'PB15:3'], table).staining).toBe(2);
  expect(traitsOfNames(['PR1'], table)).toEqual(nothingKnown);
});

test('the table has pigments that are not among the built-in paints', () => {
  const nickel = traitsOfNames(['PY150'], pigmentTable);
  expect(nickel).toMatchObject({ transparency: 'T', staining: 2, lightfastness: 'I' });
  expect(nickel.caution).toMatch(/nickel.*Check the label/);
  expect(traitsOfNames(['PBr7'], pigmentTable).transparency).toBe('SO'); // sienna or umber: the worst
});
