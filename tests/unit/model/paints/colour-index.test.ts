import { expect, test } from 'vitest';
import { parseColourIndex } from '../../../../app/model/colour-index.ts';

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
