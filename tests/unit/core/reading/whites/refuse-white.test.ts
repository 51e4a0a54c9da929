import { expect, test } from 'vitest';
import { insideStroke } from '../../../../../app/core/raster/paint-stroke.ts';
import { lineRoundWhite } from '../../../../../app/core/reading/whites/refuse-white.ts';
import { strokeInCut, strokeOnPhoto } from '../../../../../app/core/reference/photo-stroke.ts';

const size = { width: 160, height: 120 };
/** White 0 a ragged disc, white 1 a bar at the border of the picture. */
const map = Uint16Array.from({ length: size.width * size.height }, (_, i) => {
  const [x, y] = [i % size.width, Math.floor(i / size.width)];
  if (Math.hypot(x - 50, y - 60) < 25 + ((x * 7 + y * 3) % 4)) return 1;
  return x >= 120 && y < 20 ? 2 : 0;
});
const cut = {
  crop: { centre: [0.5, 0.5], size: [1, 1], turn: 0 },
  sheet: { format: 'own', widthMm: 160, heightMm: 120 },
} as const;

test.each([0, 1])(
  'a stroke kept over the photo covers white %i wholly, and not the other',
  (white) => {
    const kept = strokeOnPhoto(cut, { path: lineRoundWhite(map, size, white), brush: 0 });
    const inside = insideStroke(strokeInCut(cut, kept).path, size);
    const counts = { own: 0, missed: 0, other: 0 };
    map.forEach((one, i) => {
      if (one === white + 1) counts[inside[i] === 1 ? 'own' : 'missed']++;
      else if (one !== 0 && inside[i] === 1) counts.other++;
    });
    expect(counts.own).toBeGreaterThan(700);
    expect(counts).toMatchObject({ missed: 0, other: 0 });
  },
);

test('no line round a white that is not there', () => {
  expect(lineRoundWhite(map, size, 5)).toEqual([]);
});

test('the line lies five px beyond the white on all sides, or at the border of the picture', () => {
  const lineRound = (x: number, y: number) => {
    const small = { width: 30, height: 24 };
    const one = new Uint16Array(30 * 24);
    one[y * 30 + x] = 1;
    const line = lineRoundWhite(one, small, 0);
    const [across, down] = [line.map(([u]) => 30 * u), line.map(([, v]) => 24 * v)];
    return [Math.min(...across), Math.max(...across), Math.min(...down), Math.max(...down)].map(
      (n) => Math.round(n * 1e6) / 1e6,
    );
  };
  expect(lineRound(12, 10)).toEqual([7, 18, 5, 16]);
  expect(lineRound(2, 1)).toEqual([0, 8, 0, 7]);
  expect(lineRound(28, 22)).toEqual([23, 30, 17, 24]);
});
