import { expect, test } from 'vitest';
import {
  bandOfCell,
  bandOfGroup,
  CellTones,
  familyOfCell,
  groupOf,
  groupOfCell,
  isPaperGroup,
  maxCells,
  packCell,
  packCells,
  paperGroup,
  passageOfCell,
  passageOfGroup,
  sumAreasByGroup,
} from '../../../../../app/core/reading/shapes/cells.ts';

test('every band, family and passage is a cell of its own, and comes back out of it', () => {
  const cells = new Set<number>();
  for (const passage of [0, 1]) {
    for (let band = 0; band < 8; band++) {
      for (let family = 0; family < 8; family++) {
        const group = groupOf(band, passage);
        const cell = packCell(group, family);
        cells.add(cell);
        expect([bandOfCell(cell), familyOfCell(cell), passageOfCell(cell)]).toEqual([
          band,
          family,
          passage,
        ]);
        expect([groupOfCell(cell), bandOfGroup(group), passageOfGroup(group)]).toEqual([
          group,
          band,
          passage,
        ]);
      }
    }
  }
  expect(cells.size).toBe(128);
  expect([Math.min(...cells), Math.max(...cells)]).toEqual([0, 127]);
});

test('paper of each passage is of the lightest band and lies behind all others', () => {
  const cells = [0, 1].flatMap((passage) =>
    Array.from({ length: 8 }, (_, family) => {
      const cell = packCell(paperGroup(passage), family);
      expect([bandOfCell(cell), familyOfCell(cell), passageOfCell(cell)]).toEqual([
        1,
        family,
        passage,
      ]);
      expect(isPaperGroup(groupOfCell(cell))).toBe(true);
      return cell;
    }),
  );
  expect([Math.min(...cells), Math.max(...cells), maxCells]).toEqual([128, 143, 144]);
  expect([0, 15].map(isPaperGroup)).toEqual([false, false]);
});

test('maps are packed place by place; without a subject all is the first passage', () => {
  const [bands, families] = [Uint8Array.of(1, 7, 3), Uint8Array.of(0, 7, 2)];
  expect([...packCells(bands, families)]).toEqual([8, 63, 26]);
  expect([...packCells(bands, families, Uint8Array.of(0, 1, 1))]).toEqual([8, 127, 90]);
});

test('lightness is the mean over all places of the cells asked for, wherever they lie', () => {
  const cells = Uint8Array.of(5, 5, 9, 5, 127, 9);
  const tones = new CellTones(cells, {
    lightness: Float32Array.of(10, 20, 50, 60, 90, 70),
    a: new Float32Array(6).fill(3),
    b: new Float32Array(6).fill(-4),
  });
  const of = (...some: readonly number[]) => tones.meanOf((cell) => some.includes(cell));
  expect(of(5)).toEqual({ pixels: 3, lab: [30, 3, -4] });
  expect(of(9)).toEqual({ pixels: 2, lab: [60, 3, -4] });
  expect(of(127)).toEqual({ pixels: 1, lab: [90, 3, -4] });
  expect(of(5, 9, 127)).toEqual({ pixels: 6, lab: [50, 3, -4] });
  expect(of(0, 6)).toBeNull();
});

test('areas are summed by group, each place once', () => {
  const shapes = {
    kinds: Uint8Array.of(0, 8, 9, 255, 16, 8),
    areasPx: Int32Array.of(1, 1, 2, 1, 1, 1),
  };
  const areas = sumAreasByGroup(shapes, groupOfCell);
  expect([...areas.subarray(0, 3)]).toEqual([1, 4, 1]);
  expect(areas[31]).toBe(1);
  expect(areas.reduce((sum, area) => sum + area, 0)).toBe(7);
});
