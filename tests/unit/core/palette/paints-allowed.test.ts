import { describe, expect, test } from 'vitest';
import { planWishes } from '../../../../app/core/decisions/wishes.ts';
import { emptyBox } from '../../../../app/core/paint/own-box.ts';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';
import { paintsAllowed } from '../../../../app/core/palette/paints-allowed.ts';

const [one, two, three] = paintBox
  .filter(({ ci }) => !/^P(W|Bk)/.test(ci.join()))
  .map(({ id }) => id);
const ids = [one, two, three] as string[];

// Limits and figures are (own): the docstrings of what is tested say why.
describe('how many paints a palette has', () => {
  test('five where she wishes nothing, by the page and by the search alike', () => {
    expect(paintsAllowed(paintBox, {})).toMatchObject({ size: 5, must: [], fixed: false });
    expect(planWishes([], emptyBox).paletteSize).toBe(5);
  });

  test('as many as she asks for, no more than there are', () => {
    expect(paintsAllowed(paintBox, { paletteSize: 7 }).size).toBe(7);
    expect(paintsAllowed(paintBox, { box: ids }).size).toBe(3);
  });

  test('exactly those she chose', () => {
    const { size, fixed, must } = paintsAllowed(paintBox, { chosen: ids });
    expect([size, fixed, must.map(({ id }) => id)]).toEqual([3, true, ids]);
  });

  test.each([
    ['none', { paletteSize: 0 }],
    ['eight', { paletteSize: 8 }],
    ['a half', { paletteSize: 2.5 }],
    ['fewer than she wants in it', { paletteSize: 2, must: ids }],
    ['one both wanted and left out', { must: [ids[0] as string], exclude: [ids[0] as string] }],
    ['one nobody knows', { must: ['no-such-paint'] }],
  ])('%s is refused', (_name, wishes) => {
    expect(() => paintsAllowed(paintBox, wishes)).toThrow(RangeError);
  });
});

test('of her box all but whites, blacks and what she left out; whites only where she wants them', () => {
  const white = paintBox.find(({ ci }) => ci.join() === 'PW4')?.id as string;
  const black = paintBox.find(({ ci }) => /^PBk/.test(ci.join()))?.id as string;
  const box = [...ids, white, black];
  const allowed = (wishes: Parameters<typeof paintsAllowed>[1]) =>
    paintsAllowed(paintBox, { box, ...wishes })
      .paints.map(({ id }) => id)
      .toSorted();
  expect(allowed({})).toEqual(ids.toSorted());
  expect(allowed({ exclude: [two as string] })).toEqual([one, three].toSorted());
  expect(allowed({ must: [white] })).toEqual([...ids, white].toSorted());
  expect(allowed({ must: [two as string] })).toEqual(ids.toSorted());
});
