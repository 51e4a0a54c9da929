import { describe, expect, test } from 'vitest';
import { type Lab, rgbOfLab } from '../../../../../app/core/colour/lab.ts';
import { type Opened, painted, readFor } from '../../../../support/reading/rasters.ts';
import { seeded } from '../../../../support/reading/seeded.ts';

// Pictures and limits are (own): made up so that one rule decides.
const [width, height] = [300, 220];

/** Sky over a meadow in light and shade with a path; what `over` gives lies on it. Noise as of a camera. */
function meadow(over: (x: number, y: number) => Lab | null, noise = 2): Opened {
  const random = seeded(5);
  return painted(width, height, (x, y) => {
    const shade = 0.75 + 0.25 * Math.sin(x / 11.5) * Math.sin(y / 8.5);
    const grass: Lab = [58 * shade, -18 * shade, 28 * shade];
    const path: Lab = [62, 4, 16];
    const land = Math.abs(x - 210 - 0.3 * (y - 100)) < 7 ? path : grass;
    const [l, a, b] = over(x, y) ?? (y < 80 ? [82 - y / 8, -3, -16] : land);
    const stray = noise * (2 * random() - 1);
    return rgbOfLab([l + stray, a, b]);
  });
}

const inBox = (x: number, y: number, left: number, top: number, side: number): boolean =>
  x >= left && x < left + side && y >= top && y < top + side;

// Half a per cent of the sheet that differs by 12 is parted (own); what comes out follows from the picture made.
describe('a small vivid thing is seen at first glance', () => {
  const share = 0.006;
  const side = Math.round(Math.sqrt(share * width * height));
  const [left, top] = [90, 130];

  test.each([
    ['a roof of dull red', [45, 26, 20]],
    ['a roof of strong red', [48, 48, 36]],
    ['a cornflower patch', [45, 8, -38]],
    ['a roof of the path’s hue, three times as strong', [58, 14, 48]],
  ] as [string, Lab][])('%s of 0.6 %% in a meadow is a family of its own', async (_, roof) => {
    const picture = meadow((x, y) => (inBox(x, y, left, top, side) ? roof : null));
    const { reading, slotMap } = await readFor(picture);
    const slot = reading.slots[
      slotMap[(top + side / 2) * width + left + Math.round(side / 2)] as number
    ] as { family: number; lab: Lab };
    const family = reading.families.find(({ id }) => id === slot.family);
    expect(family?.share).toBeGreaterThan(0.004);
    expect(family?.share).toBeLessThan(0.009);
    expect(Math.hypot(slot.lab[1] - roof[1], slot.lab[2] - roof[2])).toBeLessThan(5);
  });

  test('what differs by less than 12 stays with its family', async () => {
    const plain = await readFor(meadow(() => null));
    const near = await readFor(
      meadow((x, y) => (inBox(x, y, left, top, side) ? [58, -13, 32] : null)),
    );
    expect(near.reading.families.length).toBe(plain.reading.families.length);
  });
});

test.each([0, 4])('a grey picture is one family, noise of its colours up to %d', async (noise) => {
  const random = seeded(8);
  const stray = (): number => noise * (2 * random() - 1);
  const { reading } = await readFor(
    painted(width, height, (x, y) => {
      const grey = 50 + 35 * Math.sin(x / 30) * Math.cos(y / 22);
      return rgbOfLab([grey, stray(), stray()]);
    }),
  );
  expect(reading.families.map(({ share }) => share)).toEqual([1]);
});

test('a sepia picture is one family', async () => {
  const { reading } = await readFor(
    painted(width, height, (x, y) => {
      const grey = 50 + 35 * Math.sin(x / 30) * Math.cos(y / 22);
      return rgbOfLab([grey, 4 + grey / 40, 10 + grey / 16]);
    }),
  );
  expect(reading.families).toHaveLength(1);
});
