import { describe, expect, test } from 'vitest';
import { sides, sideTowards } from '../../../../../app/core/raster/size.ts';
import { readPicture } from '../../../../../app/core/reading/read-picture.ts';
import { type SlotLie, slotSlopes } from '../../../../../app/core/reading/shapes/list-slots.ts';
import { painted } from '../../../../support/reading/rasters.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

const size = { width: 120, height: 80 };

function run(
  slotAt: (x: number, y: number) => number,
  lightnessAt: (x: number, y: number) => number,
): SlotLie[] {
  const { width, height } = size;
  const slots = new Uint8Array(width * height);
  const bins = new Uint8Array(width * height);
  let most = 0;
  for (let i = 0; i < slots.length; i++) {
    const [x, y] = [i % width, Math.floor(i / width)];
    slots[i] = slotAt(x, y);
    bins[i] = Math.round(lightnessAt(x, y) * 2.55);
    most = Math.max(most, slots[i] as number);
  }
  const pieces = slotSlopes(slots, bins, size, most + 1);
  for (;;) {
    const piece = pieces.next();
    if (piece.done) return piece.value;
  }
}

const whole = (): number => 0;

describe('the slope of a slot', () => {
  test('an even run from 80 at the bottom to 60 at the top: 20 L*, darkest at the top', () => {
    const [lie] = run(whole, (_, y) => 60 + (20 * y) / (size.height - 1));
    expect(lie?.slope?.towards).toBe('top');
    expect(lie?.slope?.lightness).toBeCloseTo(20, 0);
    expect(lie?.slope?.fit).toBeGreaterThan(0.99);
    expect(lie?.centre[0]).toBeCloseTo(0.5, 9);
    expect(lie?.centre[1]).toBeCloseTo(0.5, 9);
  });

  test.each(sides.map((side, i) => [side, (i * Math.PI) / 4] as const))(
    'towards the %s',
    (side, angle) => {
      const [lie] = run(whole, (x, y) => 60 - 0.1 * (x * Math.cos(angle) + y * Math.sin(angle)));
      expect(lie?.slope?.towards).toBe(side);
    },
  );

  test('flat stays flat; a wave is hardly explained by a plane', () => {
    expect(run(whole, () => 50)[0]?.slope).toBeUndefined();
    const [wave] = run(whole, (x) => 60 + 15 * Math.sin(x / 4));
    expect(wave?.slope?.fit ?? 0).toBeLessThan(0.05);
  });

  test('each slot for itself, and as a plain least-squares fit finds it', () => {
    const random = seeded(7);
    const noise = Float64Array.from({ length: size.width * size.height }, () => 6 * random());
    const slotAt = (x: number, y: number): number => (x + y < 90 ? 0 : 1);
    const lightnessAt = (x: number, y: number): number =>
      (slotAt(x, y) === 0 ? 30 + 0.3 * x : 70 - 0.2 * y) + (noise[y * size.width + x] as number);
    const lies = run(slotAt, lightnessAt);
    for (const [slot, lie] of lies.entries()) {
      // The slow way: centred values held in lists, as in any textbook.
      const px: [number, number, number][] = [];
      for (let y = 0; y < size.height; y++)
        for (let x = 0; x < size.width; x++)
          if (slotAt(x, y) === slot) px.push([x, y, Math.round(lightnessAt(x, y) * 2.55) / 2.55]);
      const mean = (f: (p: [number, number, number]) => number): number =>
        px.reduce((sum, p) => sum + f(p), 0) / px.length;
      const [mx, my, ml] = [mean((p) => p[0]), mean((p) => p[1]), mean((p) => p[2])];
      const xx = mean((p) => (p[0] - mx) ** 2);
      const yy = mean((p) => (p[1] - my) ** 2);
      const xy = mean((p) => (p[0] - mx) * (p[1] - my));
      const lx = mean((p) => (p[0] - mx) * (p[2] - ml));
      const ly = mean((p) => (p[1] - my) * (p[2] - ml));
      const gx = (yy * lx - xy * ly) / (xx * yy - xy * xy);
      const gy = (xx * ly - xy * lx) / (xx * yy - xy * xy);
      const onPlane = mean((p) => (gx * (p[0] - mx) + gy * (p[1] - my)) ** 2);
      expect(lie.slope?.lightness).toBeCloseTo(Math.sqrt(12 * onPlane), 6);
      expect(lie.slope?.fit).toBeCloseTo(onPlane / mean((p) => (p[2] - ml) ** 2), 6);
      expect(lie.slope?.towards).toBe(sideTowards(-gx, -gy));
    }
    expect(lies.map(({ slope }) => slope?.towards)).toEqual(['left', 'bottom']);
  });

  test('a line one pixel wide has no slope across it, and does not make nonsense of one', () => {
    const [, line] = run(
      (x) => (x === 5 ? 1 : 0),
      (_, y) => 40 + y / 4,
    );
    expect(line?.slope).toBeUndefined();
    expect(line?.centre[0]).toBeCloseTo(5.5 / size.width, 9);
  });
});

describe('others get their turn', () => {
  /** Rows looked at between two turns. */
  function rowsPerTurn(height: number): number[] {
    const turns = [0];
    let row = -1;
    const bins = new Proxy(new Uint8Array(3 * height).fill(100), {
      get(map, place) {
        const seen = Math.floor(Number(place) / 3);
        if (seen > row) {
          row = seen;
          turns.push((turns.pop() ?? 0) + 1);
        }
        return Reflect.get(map, place);
      },
    });
    const pieces = slotSlopes(new Uint8Array(3 * height), bins, { width: 3, height }, 1);
    while (!pieces.next().done) turns.push(0);
    return turns;
  }

  test.each([1, 255, 256, 257, 600, 1600])('after 256 rows at the most, of %i', (height) => {
    const turns = rowsPerTurn(height);
    expect(Math.max(...turns)).toBeLessThanOrEqual(256);
    expect(turns.reduce((sum, rows) => sum + rows, 0)).toBe(height);
  });

  test('a reading is called off in the midst of it', async () => {
    const { raster, clipped } = painted(20, 600, (x) => (x < 10 ? [40, 40, 40] : [200, 190, 180]));
    let pieces = 0;
    const reading = readPicture(
      {
        raster,
        clipped,
        sheet: { widthMm: 200, heightMm: 600 },
        wishes: {},
        darkest: 12,
        paper: 95.5,
      },
      async (_part, _phase, stage) => {
        if (stage === 'slopes') pieces++;
        if (pieces === 2) throw new DOMException('called off', 'AbortError');
      },
    );
    await expect(reading).rejects.toMatchObject({ name: 'AbortError' });
    expect(pieces).toBe(2); // after 256 and 512 of its 600 rows
  });
});
