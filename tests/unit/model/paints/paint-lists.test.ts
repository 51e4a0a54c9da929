import { describe, expect, test } from 'vitest';
import { askingFor, filterPaints, paintFilters } from '../../../../app/model/filter-paints.ts';
import { hueGroup } from '../../../../app/model/hue-group.ts';
import { sortPaints } from '../../../../app/model/sort-paints.ts';
import { valueSpan } from '../../../../app/model/value-span.ts';
import { card, cards } from './cards.ts';

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
