import { expect, test } from 'vitest';
import type { Paint } from '../../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { standIns } from '../../../../../app/core/palette/offers/stand-ins.ts';
import { standInInWords } from '../../../../../app/core/words/palette/stand-ins.ts';
import { fewPaints } from '../../../../support/few-paints.ts';

const paint = (id: string): Paint => {
  const found = paintBox.find((each) => each.id === id);
  if (!found) throw new Error(id);
  return found;
};
const ultramarine = 'pb29-ultramarine-blue';
const sienna = 'pbr7-burnt-sienna';

test('what she owns stands for itself, and nothing is said of it', () => {
  const found = standIns([paint(ultramarine), paint(sienna)], { box: fewPaints });
  expect(found.map(({ theirs, yours }) => [theirs, yours])).toEqual([
    [ultramarine, ultramarine],
    [sienna, sienna],
  ]);
  for (const { difference, told } of found) {
    expect(difference).toBe(0);
    expect(told).toBeNull();
  }
});

// Cobalt and ultramarine are neighbouring blues, a yellow is none (common practice, no source).
test('a blue stands in for a blue, whatever else lies in the box', () => {
  const [found] = standIns([paint('pb28-cobalt-blue')], {
    box: ['py74-arylide-yellow', 'pv19-quinacridone-red', sienna, ultramarine],
  });
  expect(found?.yours).toBe(ultramarine);
  expect(found?.told && standInInWords(found.told)).toMatch(
    /^Cobalt blue: your ultramarine blue (stands in|is nearest), /,
  );
});

test('where nothing is near, that is said, with what is nearest', () => {
  const [found] = standIns([paint(ultramarine)], { box: ['py74-arylide-yellow'] });
  expect(found?.yours).toBe('py74-arylide-yellow');
  expect(found?.told && standInInWords(found.told)).toMatch(
    /^Ultramarine blue: you have nothing near it\. Your .+ is nearest/,
  );
});

test('her own tube of the same pigment goes before all others', () => {
  const own: Paint = { ...paint(ultramarine), id: 'mine', revision: 1, name: 'my french blue' };
  const [found] = standIns([paint(ultramarine)], {
    box: ['mine', 'pb28-cobalt-blue'],
    ownPaints: [own],
  });
  expect(found?.yours).toBe('mine');
  expect(found?.told && standInInWords(found.told)).toBe(
    'Ultramarine blue: your my french blue is of the same pigment.',
  );
});

test('of the same pigment it goes before one of another that looks a little nearer, not before any', () => {
  const wanted = paint(ultramarine);
  const strength = (times: number) => ({ K: wanted.K.map((k) => times * k) });
  // The same look under another pigment's name; a tube of the same pigment that absorbs more.
  const looksAlike: Paint = {
    ...wanted,
    id: 'other',
    revision: 1,
    ci: ['PB28'],
    name: 'other blue',
  };
  const same = (times: number): Paint => ({
    ...{ ...wanted, ...strength(times), id: 'same', revision: 1, name: 'same blue' },
  });
  const chosen = (times: number) => {
    const ownPaints = [looksAlike, same(times)];
    const [alone] = standIns([wanted], { box: ['same'], ownPaints });
    const [found] = standIns([wanted], { box: ['other', 'same'], ownPaints });
    return { off: alone?.difference ?? 0, yours: found?.yours };
  };
  const [near, far] = [chosen(1.15), chosen(8)];
  // By as much as 3 (own).
  expect(near.off).toBeGreaterThan(0);
  expect(near.off).toBeLessThan(3);
  expect(near.yours).toBe('same');
  expect(far.off).toBeGreaterThan(3);
  expect(far.yours).toBe('other');
});

test('two blues get two of hers where there are two, and share one where there is none', () => {
  const blues = [paint(ultramarine), paint('pb28-cobalt-blue')];
  const two = standIns(blues, { box: [ultramarine, 'pb27-prussian-blue', sienna] });
  expect(two.map(({ yours }) => yours)).toEqual([ultramarine, 'pb27-prussian-blue']);
  const one = standIns(blues, { box: [ultramarine, sienna] });
  expect(one.map(({ yours }) => yours)).toEqual([ultramarine, ultramarine]);
});

test('a white or a black she has not is left out, and so it is said', () => {
  const found = standIns([paint('pw6-titanium-white'), paint('pbk7-carbon-black')], {
    box: [...fewPaints, 'pw4-zinc-white'],
  });
  expect(found.map(({ yours }) => yours)).toEqual(['pw4-zinc-white', null]);
  expect(found[1]?.told && standInInWords(found[1].told)).toBe(
    'Carbon black: you have no black, and do without it.',
  );
});

test('every stand-in is hers, and no other of her paints comes nearer by more than those prices', () => {
  const theirs = paintBox
    .filter(({ ci }) => !ci.every((name) => /^P(W|Bk)/.test(name)))
    .slice(0, 30);
  const all = standIns(theirs, { box: fewPaints });
  expect(all).toHaveLength(theirs.length);
  for (const { theirs: id, yours, difference } of all) {
    expect(fewPaints).toContain(yours);
    for (const other of fewPaints) {
      const [alone] = standIns([paint(id)], { box: [other] });
      if (alone && paint(other).ci.join() !== paint(id).ci.join())
        expect(difference).toBeLessThanOrEqual(alone.difference + 8 + 1e-9); // second use 5, same pigment 3 (own)
    }
  }
});

test('a box without a paint has no stand-in', () => {
  expect(standIns([paint(ultramarine)], { box: [] })).toEqual([]);
});
