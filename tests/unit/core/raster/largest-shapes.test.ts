import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { largestShapes } from '../../../../app/core/raster/largest-shapes.ts';

/** Slots by letters: '.' is slot 0. */
function mapOf(rows: readonly string[]) {
  const width = rows[0]?.length ?? 0;
  const slotMap = Uint8Array.from(rows.join(''), (letter) =>
    letter === '.' ? 0 : letter.charCodeAt(0) - 96,
  );
  return { slotMap, size: { width, height: rows.length } };
}

const own = (slot: number): number => (slot === 0 ? -1 : slot);

describe('the largest shapes', () => {
  const { slotMap, size } = mapOf([
    '..........',
    '.aaa...bb.',
    '.aaa...bb.',
    '.aaa......',
    '......a.cc',
    '.......ccc',
  ]);

  it('come largest first, each pointed at inside itself', () => {
    const found = largestShapes(slotMap, size, own, 7);
    expect(found.map(({ share }) => Math.round(share * 60))).toEqual([9, 5, 4, 1]);
    expect(found[0]?.place).toEqual([2.5 / 10, 2.5 / 6]);
    for (const { place, share } of found) {
      const at = Math.floor(place[1] * 6) * 10 + Math.floor(place[0] * 10);
      expect(slotMap[at], `${share}`).toBeGreaterThan(0);
    }
  });

  it('are no more than asked for; slots of one kind that touch are one', () => {
    expect(largestShapes(slotMap, size, own, 2)).toHaveLength(2);
    const all = largestShapes(slotMap, size, () => 0, 7);
    expect(all).toHaveLength(1);
    expect(all[0]?.share).toBe(1);
  });

  it('corners that meet do not join', () => {
    const { slotMap: corners, size: four } = mapOf(['a.', '.a']);
    expect(largestShapes(corners, four, own, 7)).toHaveLength(2);
  });
});

it('any map: shares sum to what is painted, and every place lies in its own shape', () => {
  const map = fc
    .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 }))
    .chain(([width, height]) =>
      fc.record({
        width: fc.constant(width),
        height: fc.constant(height),
        slots: fc.array(fc.integer({ min: 0, max: 3 }), {
          minLength: width * height,
          maxLength: width * height,
        }),
      }),
    );
  fc.assert(
    fc.property(map, ({ width, height, slots }) => {
      const slotMap = Uint8Array.from(slots);
      const found = largestShapes(slotMap, { width, height }, own, 1000);
      const painted = slots.filter((slot) => slot > 0).length / slots.length;
      expect(found.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(painted, 9);
      const places = new Set<number>();
      for (const { place } of found) {
        const at = Math.floor(place[1] * height) * width + Math.floor(place[0] * width);
        expect(slotMap[at]).toBeGreaterThan(0);
        places.add(at);
      }
      expect(places.size).toBe(found.length);
    }),
    { numRuns: 150 },
  );
});
