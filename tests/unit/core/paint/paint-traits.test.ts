import { expect, test } from 'vitest';
import { paintBox, pigmentTable } from '../../../../app/core/paint/paint-box.ts';
import {
  careOfNames,
  nothingKnown,
  type PigmentTraits,
  traitsOfNames,
  worstProperties,
} from '../../../../app/core/paint/paint-traits.ts';
import { cautionInWords, notKnownHere } from '../../../../app/core/words/cautions.ts';
import { paintTraits } from '../../../../app/core/words/paint/paint-traits.ts';
import { parseColourIndex } from '../../../../app/core/words/paint-entry.ts';

test.each([
  ['PB29', ['PB29']],
  ['pb29, py 150', ['PB29', 'PY150']],
  ['pbr7;PBK9 + pw6 / PO073', ['PBr7', 'PBk9', 'PW6', 'PO73']],
  ['PB15:3 PB 15 : 1', ['PB15:3', 'PB15:1']],
  [' PR101, pr101 ,', ['PR101']],
  ['PM2, nr9, PV19, PG7', ['PM2', 'NR9', 'PV19', 'PG7']],
])('"%s" is read as %j', (text, names) => {
  expect(parseColourIndex(text)).toEqual(names);
});

test.each([
  ['ultramarine', /“ultramarine” is no Colour Index name.*PB29, PY150/],
  ['PB29, PX3', /“PX3” is no/],
  ['PB', /“PB” is no/],
  ['PB29 blue', /“blue” is no/],
  ['PB0', /“PB0” is no/],
  ['PB15:30', /“PB15:30” is no/],
  ['PB29x', /“PB29x” is no/],
  ['29', /“29” is no/],
  ['  ,', /names are missing/],
  ['', /names are missing/],
])('"%s" is refused with a sentence', (text, sentence) => {
  expect(parseColourIndex(text)).toMatch(sentence);
});

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
  caution: 'Contains cobalt: may cause allergy.',
} as const;

test('of several pigments the worst of each property counts, every caution once', () => {
  expect(worstProperties([clear, dull, dull])).toEqual({
    transparency: 'SO',
    staining: 2,
    granulation: 2,
    lightfastness: 'III in an old table',
    caution: 'Contains cobalt: may cause allergy.',
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
  expect(traitsOfNames(['PR1'], table)).toEqual({ ...nothingKnown, caution: notKnownHere });
});

test('a pigment nobody knows here is to be minded, beside what is known of the others', () => {
  const table: PigmentTraits[] = [
    { ci: 'PB28', properties: { ...clear, caution: 'Contains cobalt: out of the mouth.' } },
  ];
  const { caution } = traitsOfNames(['PB28', 'PR1'], table);
  expect(caution).toMatch(/^Contains cobalt: out of the mouth\. Not known here: ask the label/);
  const properties = traitsOfNames(['PR1'], table);
  expect(cautionInWords({ name: 'mystery red', ci: ['PR1'], properties })).toBe(
    'Mystery red is not known here: ask the label and the safety data sheet before you use it.',
  );
});

test('the table has pigments that are not among the built-in paints', () => {
  const nickel = traitsOfNames(['PY150'], pigmentTable);
  expect(nickel).toMatchObject({
    transparency: 'T',
    staining: 1,
    lightfastness: 'I (from memory; newer tests)',
  });
  expect(paintTraits(nickel)).toMatch(/lightfastness I \(newer tests\)$/); // how sure it is stands elsewhere
  expect(traitsOfNames(['PO43'], pigmentTable).transparency).toBe('ST'); // no built-in paint has it
  expect(nickel.caution).toMatch(/nickel.*never sand, scrape, spray/);
  expect(traitsOfNames(['PBr7'], pigmentTable).transparency).toBe('SO'); // sienna or umber: the worst
});

test('without a caution it is said whether nothing is remembered, or nothing known', () => {
  const care = (...names: string[]) =>
    careOfNames(names, traitsOfNames(names, pigmentTable).caution, pigmentTable);
  expect(care('PB29')).toBe('No special care known.');
  expect(care('PR258')).toMatch(/^Not known here: ask the label and the safety data sheet/);
  expect(care('PB29', 'PR258')).toMatch(/^Not known here/); // one of them is enough
  expect(care()).toMatch(/^Not known here/); // a tube that tells no pigment
  expect(care('PB15:3')).toMatch(
    /^Copper is bound in it: wipe the brush before you rinse it\. No special care/,
  );
  expect(care('PY35:1')).toBe(traitsOfNames(['PY35'], pigmentTable).caution);
  for (const { ci, properties } of paintBox.filter((paint) => paint.ci.length > 0))
    expect(careOfNames(ci, properties.caution, pigmentTable), ci.join()).not.toMatch(/^Not known/);
});
