import { describe, expect, it } from 'vitest';
import type { Lab } from '../../../../app/core/colour/lab.ts';
import {
  colourOfWashes,
  reflectanceOfWashes,
} from '../../../../app/core/paint/colour-of-washes.ts';
import type { MixNeighbour, NeighbourWay, Part } from '../../../../app/core/paint/mix.ts';
import { mixNeighbours, nearbyParts } from '../../../../app/core/paint/mix-neighbours.ts';
import type { Paint } from '../../../../app/core/paint/paint.ts';
import { paintBox } from '../../../../app/core/paint/paint-box.ts';
import { wetLab } from '../../../../app/core/paint/wet-look.ts';
import { additionInWords } from '../../../../app/core/words/paint/mix-words.ts';

const yellow = 'py74-arylide-yellow';
const red = 'pv19-quinacridone-red';
const blue = 'pb29-ultramarine-blue';
const sienna = 'pbr7-burnt-sienna';
const green = 'pg7-phthalocyanine-green';
const palette = [yellow, red, blue, sienna, green].map(
  (id) => paintBox.find((paint) => paint.id === id) as Paint,
);
const part = (paint: string, parts: number): Part => ({ paint, parts });
const mixes = [
  { parts: [part(blue, 1)], load: 2 },
  { parts: [part(blue, 3), part(sienna, 2)], load: 2 },
  { parts: [part(yellow, 2), part(blue, 1), part(red, 1)], load: 1.5 },
  { parts: [part(green, 1), part(red, 2)], load: 4 },
  { parts: [part(yellow, 5), part(sienna, 3)], load: 3 },
];
const grounds = [[], [{ parts: [part(yellow, 1)], load: 1 }]];
const chroma = ([, a, b]: Lab): number => Math.hypot(a, b);

/** What each way has to do to L*, a*, b*: signs, written out by hand. */
const goes: Record<NeighbourWay, (here: Lab, there: Lab) => boolean> = {
  'half a value lighter': (here, there) => Math.abs(there[0] - here[0] - 5) < 0.3,
  'half a value darker': (here, there) => Math.abs(here[0] - there[0] - 5) < 0.3,
  warmer: (here, there) => there[2] - here[2] + (there[1] - here[1]) > 1,
  cooler: (here, there) => there[2] - here[2] + (there[1] - here[1]) < -1,
  'more yellow': (here, there) => there[2] > here[2] + 1,
  'more red': (here, there) => there[1] > here[1] + 1,
  'more blue': (here, there) => there[2] < here[2] - 1,
  'more green': (here, there) => there[1] < here[1] - 1,
  duller: (here, there) => chroma(there) < chroma(here) - 1,
  clearer: (here, there) => chroma(there) > chroma(here) + 1,
};

const cases = mixes.flatMap((mix) => grounds.map((below) => ({ mix, below })));

describe.each(cases)('neighbours of $mix.parts over $below', ({ mix, below }) => {
  const found = mixNeighbours(palette, below, mix);
  const washOf = ({ parts, load }: Pick<MixNeighbour, 'parts' | 'load'>) => ({
    paints: parts.map(({ paint }) => palette.find(({ id }) => id === paint) as Paint),
    parts: parts.map((each) => each.parts),
    load,
  });

  it('go the way they say', () => {
    expect(found.neighbours.length).toBeGreaterThanOrEqual(3);
    for (const { way, dry } of found.neighbours) {
      expect(goes[way](found.dry, dry), way).toBe(true);
    }
  });

  it('look as told when laid anew, are wet darker, and keep the value but for strength alone', () => {
    for (const neighbour of found.neighbours) {
      const { way, dry, wet, parts } = neighbour;
      const laid = [...below, neighbour].map(washOf);
      for (const i of [0, 1, 2] as const) {
        expect(dry[i]).toBeCloseTo(colourOfWashes(laid)[i], 6);
        expect(wet[i]).toBeCloseTo(wetLab(reflectanceOfWashes(laid))[i], 6);
      }
      expect(wet[0]).toBeLessThan(dry[0]);
      if (way.startsWith('half')) expect(parts).toEqual(mix.parts);
      else expect(Math.abs(dry[0] - found.dry[0]), way).toBeLessThan(1);
      expect(parts.length).toBeLessThanOrEqual(3);
      expect(parts.reduce((sum, each) => sum + each.parts, 0)).toBeLessThanOrEqual(8);
    }
  });

  it('come out the same a second time', () => {
    expect(mixNeighbours(palette, below, mix)).toEqual(found);
  });
});

it('says what to add', () => {
  const { neighbours } = mixNeighbours(palette, [], { parts: [part(blue, 1)], load: 2 });
  const add = new Map(neighbours.map((each) => [each.way, additionInWords(each.add)]));
  expect(add.get('half a value lighter')).toMatch(/water/);
  expect(add.get('half a value darker')).toMatch(/its own paint in the same water/);
  expect(add.get('warmer')).toMatch(/^one part [a-z ]+ to \d parts? of this mix$/);
});

it('lists one part more to the puddle, or to several times as much of it', () => {
  const found = nearbyParts([part(blue, 3), part(sienna, 1)], [blue, sienna, yellow]);
  expect(found.map(({ added, to, parts }) => [added, to, parts.map((each) => each.parts)])).toEqual(
    [
      [blue, 4, [4, 1]],
      [sienna, 4, [3, 2]],
      [sienna, 8, [2, 1]],
      [yellow, 4, [3, 1, 1]],
    ],
  );
  const alone = nearbyParts([part(blue, 1)], [blue, yellow]);
  // Up to six to one: less is not squeezed out.
  expect(alone.map(({ to }) => to)).toEqual([1, 2, 3, 4, 5, 6]);
  // Nine parts are too many, and there are three paints already.
  const full = [part(blue, 2), part(yellow, 1), part(red, 5)];
  expect(nearbyParts(full, [blue, yellow, red, green])).toEqual([]);
});

it('refuses a paint that is not in the palette, in words', () => {
  expect(() => mixNeighbours(palette, [], { parts: [part('none', 1)], load: 1 })).toThrow(
    /There is no paint 'none'/,
  );
});
