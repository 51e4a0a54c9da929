import { expect, test } from 'vitest';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';
import { classicPalettes, resolveClassic } from '../../../../app/core/palette/classic-palettes.ts';

const classic = (id: string) => {
  const found = classicPalettes.find((each) => each.id === id);
  if (!found) throw new Error(id);
  return found;
};
const boxOf = (...ids: string[]) => paintBox.filter(({ id }) => ids.includes(id));

test.each(classicPalettes)('$title is whole in the built-in box, each paint once', (palette) => {
  const { paints, missing } = resolveClassic(palette, paintBox);
  expect(missing).toEqual([]);
  expect(new Set(paints).size).toBe(palette.paints.length);
  expect(paints.length).toBeLessThanOrEqual(7);
});

test('burnt sienna is not taken for raw sienna, which has the same Colour Index name', () => {
  expect(resolveClassic(classic('pair'), paintBox).paints).toEqual([
    'pbr7-burnt-sienna',
    'pb29-ultramarine-blue',
  ]);
});

test('the nearest she owns stands in, and what she lacks is named', () => {
  const box = boxOf('py184-bismuth-vanadate', 'pb36-cerulean-blue');
  expect(resolveClassic(classic('primaries'), box)).toEqual({
    paints: ['py184-bismuth-vanadate', 'pb36-cerulean-blue'],
    missing: ['a cool red (PV19)'],
  });
});

test('a single pigment is taken before a mixed tube of the same name', () => {
  const mixed = { id: 'own-mixed', name: 'my blue', ci: ['PB29', 'PV19'] };
  const single = { id: 'own-single', name: 'my ultramarine', ci: ['PB29'] };
  expect(resolveClassic(classic('pair'), [mixed, single]).paints).toEqual(['own-single']);
  expect(resolveClassic(classic('pair'), [mixed]).paints).toEqual(['own-mixed']);
});

test('an empty box gives nothing but what is missing', () => {
  const { paints, missing } = resolveClassic(classic('earths'), []);
  expect(paints).toEqual([]);
  expect(missing).toEqual([
    'yellow ochre (PY43)',
    'burnt sienna (PBr7)',
    'burnt umber (PBr7)',
    'a reddish blue (PB29)',
  ]);
});
