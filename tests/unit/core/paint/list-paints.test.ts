import { describe, expect, test } from 'vitest';
import { lightnessOfValue } from '../../../../app/core/colour/lightness.ts';
import {
  askingFor,
  filterPaints,
  hueGroup,
  paintFilters,
  paintUses,
  paintUsesInWords,
  sortPaints,
  valueSpan,
  valueSpanInWords,
} from '../../../../app/core/paint/list-paints.ts';
import {
  nothingKnown,
  traitsBySource,
  traitsInWords,
} from '../../../../app/core/paint/paint-traits.ts';
import { card, cards } from '../../../support/paint/cards.ts';

// Which paint is used for what: common practice, no source.
test.each([
  ['pb27-prussian-blue', ['early', 'glazing', 'darks']],
  ['pb29-ultramarine-blue', ['glazing', 'darks', 'lifting', 'granulating']],
  ['py35-cadmium-yellow', ['late']],
  ['pb28-cobalt-blue', ['lifting', 'granulating']],
  ['pbr7-burnt-umber', ['darks', 'late']],
  ['pbk7-carbon-black', ['darks']], // nothing is remembered of it, but it is seen to be dark
])('%s', (id, uses) => {
  expect(paintUses(card(id))).toEqual(uses);
});

test('in words', () => {
  expect(paintUsesInWords(card('pb28-cobalt-blue'))).toBe(
    'Good for lifting out; granulating washes.',
  );
  expect(paintUsesInWords(card('pr5-naphthol-red'))).toMatch(/not known.*scrap/);
  expect(paintUsesInWords(card('py74-arylide-yellow'))).toBe('Good for mixing.');
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

const ids = (list: readonly { id: string }[]) => list.map(({ id }) => id);

describe('order', () => {
  test('by hue: yellow, orange, red, violet, blue, green, greys last', () => {
    const order = ids(sortPaints(cards, 'hue'));
    const placed = [
      'py175-lemon-yellow',
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
    expect(order).toHaveLength(33);
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
        ([value]) => filterPaints(cards, { [name]: value }).length,
      );
      expect(counts.reduce((sum, count) => sum + count, 0)).toBe(33);
    }
    const transparency = paintFilters.transparency.choices.flatMap(([value]) =>
      filterPaints(cards, { transparency: value }),
    );
    expect(transparency).toHaveLength(33 - 2); // nothing is known of naphthol red and carbon black
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
  ])('%s is found under %s', (id, group) => {
    expect(hueGroup(card(id))).toBe(group);
  });

  test('filters narrow each other; one dropped lets its paints back', () => {
    const dark = askingFor({}, 'reach', 'dark');
    const darkBlue = askingFor(dark, 'hue', 'blue');
    expect(ids(filterPaints(cards, darkBlue)).sort()).toEqual([
      'pb27-prussian-blue',
      'pb29-ultramarine-blue',
      'pb60-indanthrone-blue',
    ]);
    expect(ids(filterPaints(cards, askingFor(darkBlue, 'granulation', '2')))).toEqual([
      'pb29-ultramarine-blue',
    ]);
    expect(askingFor(darkBlue, 'hue', undefined)).toEqual(dark);
    expect(filterPaints(cards, {})).toHaveLength(33);
  });
});
