import { describe, expect, test } from 'vitest';
import { type Lab, rgbOfLab } from '../../../../../app/core/colour/lab.ts';
import { mergePassages } from '../../../../../app/core/plan/targets/adjust-targets.ts';
import { bandsWithin, type ReadingWishes } from '../../../../../app/core/reading/reading.ts';
import { countBins } from '../../../../../app/core/reading/values/list-bands.ts';
import { subjectLimits } from '../../../../../app/core/reading/values/subject-limits.ts';
import { painted, readFor } from '../../../../support/reading/rasters.ts';
import { sound } from '../../../../support/reading/sound-reading.ts';

// Pictures and limits are (own): made up so that one rule decides.
const range = { mode: 'photographed', paper: 95 } as const;

/** A map of bins: so many pixels of each L*, those of the subject last. */
function tones(ground: readonly number[], subject: readonly number[]) {
  const all = [...ground, ...subject].flatMap((lightness) =>
    new Array<number>(50).fill(Math.round(2.55 * lightness)),
  );
  const map = Uint8Array.from(all);
  const isSubject = map.map((_, i) => (i >= 50 * ground.length ? 1 : 0));
  return { map, isSubject, histogram: countBins(map) };
}

describe('limits within the subject', () => {
  test('as many values as the picture has, parted where its own tones part', () => {
    const { map, isSubject, histogram } = tones([10, 20, 90], [45, 55, 65, 75]);
    const own = subjectLimits(map, isSubject, histogram, [15, 40, 70], range);
    expect(own?.bands).toEqual([1, 2, 3, 4]);
    expect(own?.limits.map(Math.round)).toEqual([50, 60, 70]);
  });

  test('tones that can not be told apart are one, and go by the band they lie nearest to', () => {
    const { map, isSubject, histogram } = tones([10, 35, 60, 90], [58, 61, 64]);
    const own = subjectLimits(map, isSubject, histogram, [20, 45, 75], range);
    expect(own).toEqual({ limits: [], bands: [2] });
  });

  test('two tones keep the places of the two bands they are like', () => {
    const { map, isSubject, histogram } = tones([10, 35, 60, 90], [12, 88]);
    const own = subjectLimits(map, isSubject, histogram, [20, 45, 75], range);
    expect(own?.bands).toEqual([1, 4]);
  });

  test('what stays paper is never parted from the lightest', () => {
    const { map, isSubject, histogram } = tones([10, 60], [86, 98]);
    const own = subjectLimits(map, isSubject, histogram, [35], range);
    expect(own?.limits).toEqual([90]);
  });

  test('none for a subject without pixels', () => {
    const { map, histogram } = tones([10, 60], []);
    expect(
      subjectLimits(
        map,
        map.map(() => 0),
        histogram,
        [35],
        range,
      ),
    ).toBeNull();
  });
});

const [width, height] = [480, 352];
/** A pale jug of four near tones before a wall of black and white. */
const jug = painted(width, height, (x, y) => {
  const isJug = Math.hypot(x - 240, y - 176) < 80;
  const inJug: Lab = [50 + 10 * Math.min(3, Math.max(0, Math.floor((x - 160) / 40))), 3, 12];
  const wall: Lab = [x < 120 ? 8 : x > 360 ? 94 : 25, 0, 0];
  return rgbOfLab(isJug ? inJug : wall);
});
const circle = {
  mode: 'circle' as const,
  brush: 0,
  path: Array.from({ length: 40 }, (_, i) => {
    const angle = (i / 40) * 2 * Math.PI;
    return [0.5 + (90 * Math.cos(angle)) / width, 0.5 + (90 * Math.sin(angle)) / height] as const;
  }),
};
const read = (wishes: ReadingWishes) => readFor(jug, { subject: [circle], bands: 4, ...wishes });

describe('a subject of near tones before a wall of far ones', () => {
  test('is drawn in all its tones, and says at what lightness', async () => {
    const found = await read({});
    sound(found);
    const inJug = found.reading.slots.filter(({ passage }) => passage === 'subject');
    expect(new Set(inJug.map(({ band }) => band)).size).toBe(4);
    const within = bandsWithin(found.reading, 'subject').map(({ lightness }) =>
      Math.round(lightness),
    );
    for (const [n, lightness] of [80, 70, 60, 50].entries()) {
      expect(Math.abs((within[n] as number) - lightness)).toBeLessThanOrEqual(2);
    }
    expect(bandsWithin(found.reading, 'ground')).toBe(found.reading.bands);
  });

  test('limits she set hold in it too', async () => {
    const { reading } = await read({ limits: [15, 40, 85] });
    expect(reading.subjectBands).toBeUndefined();
    // A little of the wall lies within the circle.
    const jugs = reading.slots.filter(({ passage, lab }) => passage === 'subject' && lab[0] > 45);
    expect(new Set(jugs.map(({ band }) => band)).size).toBe(1);
  });

  test('painted together with the wall it goes by the bands of the picture', async () => {
    const { reading } = await read({});
    for (const { band, lab } of mergePassages(reading, 'together')) {
      const { from = 0, to = 0 } = reading.bands[band - 1] ?? {};
      expect(lab[0] >= from && lab[0] <= to).toBe(true);
    }
  });
});
