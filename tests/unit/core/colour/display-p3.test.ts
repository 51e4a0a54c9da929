import { useMode as addMode, converter, modeLab65, modeP3, modeRgb } from 'culori/fn';
import { describe, expect, test } from 'vitest';
import { p3ToSrgb, srgbToP3 } from '../../../../app/core/colour/display-p3.ts';
import { labOfLinear } from '../../../../app/core/colour/lab.ts';
import { decodeSrgb } from '../../../../app/core/colour/srgb.ts';
import { seeded } from '../../../support/reading/seeded.ts';
import { fullCodes, taggedCodes, widePatches } from '../../../support/reading/wide-patches.ts';

addMode(modeLab65);
addMode(modeP3);
addMode(modeRgb);
const toLab = converter('lab65');

type Three = readonly [number, number, number];

const planesOf = (light: Three) => ({
  red: Float32Array.of(light[0]),
  green: Float32Array.of(light[1]),
  blue: Float32Array.of(light[2]),
});

const turned = (light: Three, turn: typeof p3ToSrgb): Three => {
  const planes = planesOf(light);
  turn(planes, 0, 1);
  return [planes.red[0] as number, planes.green[0] as number, planes.blue[0] as number];
};

/** CSS Color 4, 18, sample code: linear Display P3 to XYZ, XYZ to linear sRGB. */
const p3ToXyz = [
  [608311 / 1250200, 189793 / 714400, 198249 / 1000160],
  [35783 / 156275, 247089 / 357200, 198249 / 2500400],
  [0 / 1, 32229 / 714400, 5220557 / 5000800],
];
const xyzToSrgb = [
  [12831 / 3959, -329 / 214, -1974 / 3959],
  [-851781 / 878810, 1648619 / 878810, 36519 / 878810],
  [705 / 12673, -2585 / 12673, 705 / 667],
];
const times = (matrix: readonly number[][], light: readonly number[]): number[] =>
  matrix.map((row) => row.reduce((sum, share, i) => sum + share * (light[i] as number), 0));

const primaries: readonly Three[] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
  [0.2, 0.9, 0.4],
];

describe('linear light of the other primaries', () => {
  test.each(primaries)('%f %f %f is as the published matrices have it, both ways', (...light) => {
    const expected = times(xyzToSrgb, times(p3ToXyz, light)) as unknown as Three;
    turned(light, p3ToSrgb).forEach((one, i) => {
      expect(one).toBeCloseTo(expected[i] as number, 6);
    });
    turned(expected, srgbToP3).forEach((one, i) => {
      expect(one).toBeCloseTo(light[i] as number, 6);
    });
  });

  test('the full red of Display P3 is sRGB 1.2249, -0.0421, -0.0196', () => {
    const [red, green, blue] = turned([1, 0, 0], p3ToSrgb);
    expect(red).toBeCloseTo(1.2249, 4);
    expect(green).toBeCloseTo(-0.0421, 4);
    expect(blue).toBeCloseTo(-0.0196, 4);
  });

  test('greys stay greys, white stays white', () => {
    for (const grey of [0, 0.0123, 0.5, 1]) {
      for (const turn of [p3ToSrgb, srgbToP3]) {
        for (const one of turned([grey, grey, grey], turn)) expect(one).toBeCloseTo(grey, 7);
      }
    }
  });

  test('only the pixels told are turned', () => {
    const planes = {
      red: Float32Array.of(1, 1, 1),
      green: new Float32Array(3),
      blue: new Float32Array(3),
    };
    p3ToSrgb(planes, 1, 2);
    expect([planes.red[0], planes.red[2]]).toEqual([1, 1]);
    expect(planes.red[1]).toBeGreaterThan(1.2);
  });

  test('500 seeded colours have the Lab that culori gives them', () => {
    const random = seeded(3);
    for (let i = 0; i < 500; i++) {
      const [r, g, b] = [random(), random(), random()];
      const [l, a, blue] = labOfLinear(
        ...turned([decodeSrgb(r), decodeSrgb(g), decodeSrgb(b)], p3ToSrgb),
      );
      const theirs = toLab({ mode: 'p3', r, g, b });
      expect(Math.hypot(l - theirs.l, a - theirs.a, blue - theirs.b)).toBeLessThan(2e-3);
    }
  });
});

test('the truth told of the wide cases is that of culori', () => {
  const modes = [
    ['p3', fullCodes],
    ['rgb', taggedCodes],
    ['rgb', taggedCodes],
  ] as const;
  widePatches.forEach(([, truth], file) => {
    const [mode, codes] = modes[file] as (typeof modes)[number];
    codes.forEach(([r, g, b], i) => {
      const { l, a, b: blue } = toLab({ mode, r: r / 255, g: g / 255, b: b / 255 });
      [l, a, blue].forEach((one, c) => {
        expect(one).toBeCloseTo(truth[i]?.[c] as number, 3);
      });
    });
  });
});
