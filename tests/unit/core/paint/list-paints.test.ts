import { describe, expect, test } from 'vitest';
import { lightnessOfValue } from '../../../../app/core/colour/lightness.ts';
import {
  askingFor,
  filterPaints,
  findPaints,
  hueGroup,
  paintFilters,
  paintUses,
  sortPaints,
  valueSpan,
} from '../../../../app/core/paint/list-paints.ts';
import { nothingKnown } from '../../../../app/core/paint/paint-traits.ts';
import { traitsBySource, traitsInWords } from '../../../../app/core/words/paint/paint-traits.ts';
import {
  paintUsesInWords,
  valueSpanInWords,
} from '../../../../app/core/words/paint/paint-words.ts';
import { card, cards } from '../../../support/paint/cards.ts';

// Which paint is used for what: common practice, no source.
test.each([
  ['pb27-prussian-blue', ['early', 'darks']],
  ['pb29-ultramarine-blue', ['darks', 'granulating']],
  ['py35-cadmium-yellow', ['late']],
  ['pg18-viridian', ['glazing', 'lifting', 'granulating']],
  ['ready-sap-green', ['early', 'glazing']],
  ['hue-sap-green', []], // nothing is known of it
])('%s', (id, uses) => {
  expect(paintUses(card(id))).toEqual(uses);
});

test('in words', () => {
  expect(paintUsesInWords(card('pg18-viridian'))).toBe(
    'Good for glazing, lifting out and granulating washes.',
  );
  expect(paintUsesInWords(card('hue-sap-green'))).toMatch(/not known.*scrap/);
  expect(paintUsesInWords(card('py74-arylide-yellow'))).toBe('Good for mixing.');
});

test('the values a paint spans, by the ladder', () => {
  const ladder = [9.2, 5, 2.1].map((value) => [lightnessOfValue(value), 0, 0] as const);
  expect(valueSpanInWords(ladder)).toBe('value 2.1 to 9.2');
});

test('what is commonly given is told apart from what she says', () => {
  const properties = {
    ...nothingKnown,
    transparency: 'T',
    staining: 2,
    lightfastness: 'I (from memory)',
  } as const;
  expect(traitsInWords({ properties })).toBe(
    'Transparent, stains, lightfastness I, granulation unknown.',
  );
  const mixed = { properties, fromMemory: ['staining', 'granulation'] as const };
  expect(traitsBySource(mixed)).toEqual({
    hers: ['transparent', 'lightfastness I'],
    given: ['stains'],
    unknown: ['granulation'],
  });
  expect(
    traitsInWords({ properties: { ...properties, lightfastness: null }, fromMemory: [] }),
  ).toBe('Transparent and stains (yours), granulation and lightfastness unknown.');
  expect(traitsInWords({ properties: nothingKnown })).toBe(
    'Transparency, staining, granulation and lightfastness unknown.',
  );
});

const ids = (list: readonly { id: string }[]) => list.map(({ id }) => id);

describe('order', () => {
  test('by hue: yellow, orange, red, violet, blue, green, greys last', () => {
    const order = ids(sortPaints(cards, 'hue'));
    const placed = [
      'py175-benzimidazolone-yellow',
      'py35-cadmium-yellow',
      'po20-cadmium-orange',
      'pr254-pyrrole-red',
      'pr122-quinacridone-magenta',
      'pv23-dioxazine-violet',
      'pb29-ultramarine-blue',
      'pg7-phthalocyanine-green',
      'pg17-chromium-oxide',
      'pw6-titanium-white',
      'pbk9-bone-black',
    ].map((id) => order.indexOf(id));
    expect(placed).toEqual([...placed].sort((a, b) => a - b));
    expect(order).toHaveLength(cards.length);
  });

  test('darkest first, and by name', () => {
    const darkest = sortPaints(cards, 'dark').map(({ ladder }) => valueSpan(ladder).darkest);
    expect(darkest).toEqual([...darkest].sort((a, b) => a - b));
    const names = sortPaints(cards, 'name').map(({ name }) => name.toLowerCase());
    expect(names).toEqual([...names].sort((a, b) => a.localeCompare(b, 'en')));
  });
});

describe('filters', () => {
  test('every paint is in exactly one group of hue and of reach, most in one of each trait', () => {
    for (const name of ['hue', 'reach', 'lightfastness'] as const) {
      const counts = paintFilters[name].choices.map(
        (value) => filterPaints(cards, { [name]: value }).length,
      );
      expect(counts.reduce((sum, count) => sum + count, 0)).toBe(cards.length);
    }
    const transparency = paintFilters.transparency.choices.flatMap((value) =>
      filterPaints(cards, { transparency: value }),
    );
    expect(transparency).toHaveLength(cards.length - 5); // five tubes do not tell their pigments
  });

  test.each([
    ['pbr7-raw-umber', 'earth'],
    ['py43-yellow-ochre', 'earth'],
    ['pr101-red-iron', 'earth'],
    ['pb36-cerulean-blue', 'blue'],
    ['pr122-quinacridone-magenta', 'red'],
    ['pv23-dioxazine-violet', 'violet'],
    ['pg7-phthalocyanine-green', 'green'],
    ['pw4-zinc-white', 'grey'],
    ['pg23-green-earth', 'earth'],
    ['hue-sepia', 'earth'],
    ['ready-sap-green', 'green'],
    ['hue-sap-green', 'green'],
    ['hue-olive-green', 'green'],
    ['py129-azomethine-copper', 'yellow'],
    ['hue-lemon-yellow', 'yellow'],
  ])('%s is found under %s', (id, group) => {
    expect(hueGroup(card(id))).toBe(group);
  });

  test('filters narrow each other; one dropped lets its paints back', () => {
    const dark = askingFor({}, 'reach', 'dark');
    const darkBlue = askingFor(dark, 'hue', 'blue');
    expect(ids(filterPaints(cards, darkBlue)).sort()).toEqual([
      'hue-indigo',
      'hue-neutral-tint',
      'hue-payne-s',
      'pb27-prussian-blue',
      'pb29-ultramarine-blue',
      'pb60-indanthrone-blue',
    ]);
    expect(ids(filterPaints(cards, askingFor(darkBlue, 'granulation', '2')))).toEqual([
      'pb29-ultramarine-blue',
    ]);
    expect(askingFor(darkBlue, 'hue', undefined)).toEqual(dark);
    expect(filterPaints(cards, {})).toHaveLength(cards.length);
  });
});

describe('what she types to find a paint', () => {
  test.each([
    ['PB60', ['pb60-indanthrone-blue', 'hue-indigo']],
    [' pb 60', ['pb60-indanthrone-blue', 'hue-indigo']],
    ['aureolin', ['py40-cobalt-yellow']], // only a remark of the table
    ['burnt sienna', ['pbr7-burnt-sienna', 'pr101-transparent-red']], // what many tubes of that name are
    ['blue PRUSS', ['pb27-prussian-blue']],
    ['PB15:1', ['pb151-phthalocyanine-blue']],
    ['PY40', ['py40-cobalt-yellow']],
    ['PBr 25', ['pbr25-benzimidazolone-brown']],
    ['rhubarb', []],
  ])('"%s"', (text, found) => {
    expect(ids(findPaints(cards, text)).sort()).toEqual([...found].sort());
  });

  test('nothing finds all', () => {
    expect(findPaints(cards, '  ')).toEqual(cards);
  });
});
