import { expect, test } from 'vitest';
import { goodFor, goodForInWords } from '../../../../app/model/good-for.ts';
import { lightnessOfValue } from '../../../../app/model/munsell-value.ts';
import { nothingKnown } from '../../../../app/model/pigment-traits.ts';
import { traitsBySource, traitsInWords } from '../../../../app/model/traits-by-source.ts';
import { valueSpanInWords } from '../../../../app/model/value-span.ts';
import { card } from './cards.ts';

// Which paint is used for what: common practice, no source.
test.each([
  ['pb27-prussian-blue', ['early', 'glazing', 'darks']],
  ['pb29-ultramarine-blue', ['glazing', 'darks', 'lifting', 'granulating']],
  ['py35-cadmium-yellow', ['late']],
  ['pb28-cobalt-blue', ['lifting', 'granulating']],
  ['pbr7-burnt-umber', ['darks', 'late']],
  ['pbk7-carbon-black', ['darks']], // nothing is remembered of it, but it is seen to be dark
])('%s', (id, uses) => {
  expect(goodFor(card(id))).toEqual(uses);
});

test('in words', () => {
  expect(goodForInWords(card('pb28-cobalt-blue'))).toBe(
    'Good for lifting out; granulating washes.',
  );
  expect(goodForInWords(card('pr5-naphthol-red'))).toMatch(/not known.*scrap/);
  expect(goodForInWords(card('py74-arylide-yellow'))).toBe('Good for mixing.');
});

test('the values a paint spans, by the ladder', () => {
  const ladder = [9.2, 5, 2.1].map((value) => [lightnessOfValue(value), 0, 0] as const);
  expect(valueSpanInWords(ladder)).toBe('value 2.1 to 9.2');
});

test('what is from memory is told apart from what she says', () => {
  const properties = {
    ...nothingKnown,
    transparency: 'T',
    staining: 2,
    lightfastness: 'I',
  } as const;
  expect(traitsInWords({ properties })).toBe(
    'Transparent, stains, lightfastness I (from memory), granulation unknown.',
  );
  const mixed = { properties, fromMemory: ['staining', 'granulation'] as const };
  expect(traitsBySource(mixed)).toEqual({
    hers: ['transparent', 'lightfastness I'],
    remembered: ['stains'],
    unknown: ['granulation'],
  });
  expect(traitsInWords({ properties: nothingKnown })).toMatch(
    /^Transparency unknown.*lightfastness unknown\.$/,
  );
});
