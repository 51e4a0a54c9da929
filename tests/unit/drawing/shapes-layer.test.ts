import { expect, test } from 'vitest';
import { type Lab, labOfRgb } from '../../../app/core/colour/lab.ts';
import { pointedLayer, shapesLayer } from '../../../app/drawing/shapes-layer.ts';
import { NotedContext } from '../../support/drawing/noted-context.ts';

// Figures are those of the made maps, and of tags as the code draws them (own).

const black = 0;
const labOfCodes = (codes: readonly number[]): Lab => labOfRgb(codes as [number, number, number]);
const red = ({ pixels }: NotedContext, x: number, y: number): number =>
  pixels?.[4 * (y * 800 + x)] ?? -1;

/** A picture 800 px wide with a painted shape 1 in x 300..499, y 2..5, and shapes 0 and 2 about it. */
function drawnShapes(isPainted: readonly boolean[]): NotedContext {
  const size = { width: 800, height: 8 };
  const map = new Uint8Array(800 * 8);
  const slotMap = new Uint8Array(800 * 8);
  for (let y = 0; y < 8; y++)
    for (let x = 0; x < 800; x++) {
      const i = y * 800 + x;
      if (x >= 300 && x < 500 && y >= 2 && y < 6) [map[i], slotMap[i]] = [1, 1];
      else if (x >= 700) map[i] = 2;
    }
  const noted = new NotedContext(size);
  const colours = [0, 1].map(
    (n) =>
      [
        [20, 0, 0],
        [60, 0, 0],
      ][n] as [number, number, number],
  );
  shapesLayer({ map, isPainted }, slotMap, colours)(noted.context);
  return noted;
}

/** Columns or rows that are black along a line. */
const blackAlong = (length: number, red: (n: number) => number): number[] =>
  Array.from({ length }, (_, n) => n).filter((n) => red(n) === black);

test('a painted shape is outlined two px wide about where it ends, at 800 px, and on all sides', () => {
  const noted = drawnShapes([false, true, false]);
  // A line of 800 / 400 = 2 px: its own place and one on either side of it.
  expect(blackAlong(800, (x) => red(noted, x, 3))).toEqual([298, 299, 300, 498, 499, 500]);
  expect(blackAlong(8, (y) => red(noted, 400, y))).toEqual([0, 1, 2, 4, 5, 6]);
  expect(blackAlong(800, (x) => red(noted, x, 7))).toEqual([]); // nor where what is not painted meets
});

test('shapes are painted paled, the rest plain, each opaque', () => {
  const noted = drawnShapes([false, true, false]);
  const lightness = (x: number, y: number): number => {
    const at = 4 * (y * 800 + x);
    const [r = 0, g = 0, b = 0] = noted.pixels?.subarray(at, at + 3) ?? [];
    return labOfCodes([r, g, b])[0];
  };
  expect(lightness(400, 3)).toBeCloseTo(80, 0); // L* 60, half of it over 50
  expect(lightness(20, 4)).toBeCloseTo(90, 0);
  expect(noted.pixels?.[3]).toBe(255);
});

test('where all is painted all that meets is outlined, and all is paled', () => {
  const noted = drawnShapes([true, true, true]);
  expect(blackAlong(800, (x) => red(noted, x, 7))).toEqual([698, 699, 700]);
  const at = 4 * (7 * 800 + 20);
  const [r = 0, g = 0, b = 0] = noted.pixels?.subarray(at, at + 3) ?? [];
  expect(labOfCodes([r, g, b])[0]).toBeCloseTo(60, 0); // L* 20
});

test('colour is halved where a picture is paled', () => {
  const noted = new NotedContext({ width: 2, height: 1 });
  const shapes = { map: Uint8Array.of(0, 0), isPainted: [true] };
  shapesLayer(shapes, Uint8Array.of(0, 1), [
    [40, 40, -30],
    [40, 0, 0],
  ])(noted.context);
  const [r = 0, g = 0, b = 0] = noted.pixels ?? [];
  const [l, a, bb] = labOfCodes([r, g, b]);
  expect([l, a, bb].map(Math.round)).toEqual([70, 20, -15]);
});

test('an outline stays in the picture where the shape ends at its rim', () => {
  const noted = new NotedContext({ width: 3, height: 2 });
  const shapes = { map: Uint8Array.of(0, 1, 1, 0, 1, 1), isPainted: [true, false] };
  shapesLayer(shapes, new Uint8Array(6), [[50, 0, 0]])(noted.context);
  const reds = [0, 1, 2, 3, 4, 5].map((i) => noted.pixels?.[4 * i] === black);
  expect(reds).toEqual([true, false, false, true, false, false]); // one px at this size
});

/** What is drawn for tags at some places of a sheet 1000 x 500 px. */
function tags(
  ...places: Parameters<typeof pointedLayer>[1] extends () => readonly (infer P)[] ? P[] : never
) {
  const noted = new NotedContext({ width: 1000, height: 500 });
  pointedLayer(
    (under) => under.fillRect(0, 0, 1, 1),
    () => places,
  )(noted.context);
  return noted.drawn.slice(1);
}

test('a tag is a white slip with a black rim and its words in the middle of it', () => {
  const [slip, rim, words] = tags({ place: [0.5, 0.5], turn: 1, puddle: 'A', amount: 'thin' });
  const high = 1000 / 19;
  const wide = ('1 A thin'.length * Math.round(high * 0.68)) / 2 + high / 2;
  const box = [500 - wide / 2, 250 - high / 2, wide, high].map((n) => expect.closeTo(n, 9));
  expect(slip).toMatchObject({ did: 'fillRect', fillStyle: 'white', with: box });
  expect(rim).toMatchObject({ did: 'strokeRect', strokeStyle: 'black', with: box });
  expect(rim?.lineWidth).toBeCloseTo(high / 14, 9);
  expect(words).toMatchObject({ did: 'fillText', text: '1 A thin', fillStyle: 'black' });
  expect(words?.with).toEqual([500, expect.closeTo(250 + high / 24, 9)]);
  expect(words?.font).toMatch(/^600 36px/);
  expect(words?.set).toMatch(/center middle$/);
});

test('what is inside a shape has a slighter tag', () => {
  const [slip, rim, words] = tags({ place: [0.5, 0.5], turn: null, puddle: 'B', amount: null });
  const high = (0.8 * 1000) / 19;
  expect(slip?.with[3]).toBeCloseTo(high, 9);
  expect(rim?.lineWidth).toBeCloseTo(high / 24, 9);
  expect([words?.text, words?.font.slice(0, 8)]).toEqual(['B', '500 29px']);
});

test('a tag at the rim is moved in so that all of it is seen', () => {
  for (const place of [
    [0, 0],
    [1, 1],
  ] as const) {
    const [x = 0, y = 0, wide = 0, high = 0] =
      tags({ place, turn: 2, puddle: 'C', amount: 'strong' })[0]?.with ?? [];
    expect(x).toBeCloseTo(place[0] ? 1000 - wide : 0, 9);
    expect(y).toBeCloseTo(place[1] ? 500 - high : 0, 9);
  }
});

test('on a small picture tags are still to be read, 14 px high', () => {
  const noted = new NotedContext({ width: 60, height: 90 });
  pointedLayer(
    () => {},
    () => [{ place: [0.5, 0.5], turn: 1, puddle: null, amount: null }],
  )(noted.context);
  expect(noted.drawn[0]?.with[3]).toBe(14);
});
