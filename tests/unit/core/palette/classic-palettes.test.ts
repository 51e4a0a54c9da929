import { expect, test } from 'vitest';
import { paintBox, placeAmongOwned } from '../../../../app/core/paint/paint-box.ts';
import { classicPalettes, resolveClassic } from '../../../../app/core/palette/classic-palettes.ts';
import { missingInWords } from '../../../../app/core/words/palette/classic-palettes.ts';

const classic = (id: string) => {
  const found = classicPalettes.find((each) => each.id === id);
  if (!found) throw new Error(id);
  return found;
};
const boxOf = (...ids: string[]) => paintBox.filter(({ id }) => ids.includes(id));

// Which paints make a classic palette: common practice, no source.
test.each(classicPalettes)('$id is whole in the built-in box, each paint once', (palette) => {
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
    missing: [{ role: 'cool-red', ci: 'PV19' }],
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
  expect(missingInWords(missing)).toBe(
    'Not in your box: yellow ochre (PY43), burnt sienna (PBr7), burnt umber (PBr7), a reddish blue (PB29).',
  );
});

test('the paints most boxes hold make each of them, of single pigments', () => {
  const usual = paintBox.filter(({ id }) => placeAmongOwned(id) >= 0);
  for (const palette of classicPalettes) {
    const { paints, missing } = resolveClassic(palette, usual);
    expect(missing, palette.id).toEqual([]);
    for (const id of paints) expect(usual.find((paint) => paint.id === id)?.ci).toHaveLength(1);
  }
  expect(resolveClassic(classic('primaries'), usual).paints).toEqual([
    'py3-arylide-yellow',
    'pv19-quinacridone-rose',
    'pb153-phthalocyanine-blue',
  ]);
});

test('a substitute stands in only where the paint itself is not there', () => {
  const hues = boxOf('hue-lemon-yellow', 'hue-alizarin-crimson', 'hue-cerulean-blue');
  expect(resolveClassic(classic('primaries'), hues)).toEqual({
    paints: ['hue-lemon-yellow', 'hue-alizarin-crimson', 'hue-cerulean-blue'],
    missing: [],
  });
  const both = boxOf('hue-cobalt-blue', 'pb29-ultramarine-blue', 'pbr7-burnt-sienna');
  expect(resolveClassic(classic('pair'), both).paints).toContain('pb29-ultramarine-blue');
});

test('a mixed tube is taken by its first pigment only', () => {
  const green = boxOf('hue-hooker-s'); // PG7 and a gold
  expect(resolveClassic(classic('deep-three'), green).paints).toEqual([]);
  expect(resolveClassic(classic('deep-three'), boxOf('hue-indigo')).paints).toEqual(['hue-indigo']);
});
