import { describe, expect, test } from 'vitest';
import { type Lab, rgbOfLab } from '../../../../../app/core/colour/lab.ts';
import type { ReadingWishes } from '../../../../../app/core/reading/reading.ts';
import { painted, readFor } from '../../../../support/reading/rasters.ts';
import { sound } from '../../../../support/reading/sound-reading.ts';

// Pictures and limits are (own): made up so that one rule decides.
const [width, height] = [480, 352];

/** Families of a subject's own (own); what comes out follows from the picture made. A jug of two hues 13 apart on a ground of strong colours, which hide that in the whole picture. */
const picture = painted(width, height, (x, y) => {
  const isJug = Math.hypot(x - 240, y - 176) < 60;
  const ground: Lab = x < 160 ? [50, -40, 35] : x < 320 ? [55, 20, 60] : [45, 5, -45];
  const jug: Lab = x < 240 ? [75, 3, 8] : [75, 8, 20];
  return rgbOfLab(isJug ? jug : ground);
});
const circle = {
  mode: 'circle' as const,
  brush: 0,
  path: Array.from({ length: 40 }, (_, i) => {
    const angle = (i / 40) * 2 * Math.PI;
    return [0.5 + (68 * Math.cos(angle)) / width, 0.5 + (68 * Math.sin(angle)) / height] as const;
  }),
};
const read = (wishes: ReadingWishes = {}) => readFor(picture, { subject: [circle], ...wishes });

describe('a subject is read for itself', () => {
  test('its own hues are told apart, and the ground keeps its own', async () => {
    const found = await read();
    sound(found);
    const familiesOf = (passage: string) =>
      new Set(found.reading.slots.filter((s) => s.passage === passage).map((s) => s.family));
    expect(familiesOf('subject').size).toBe(2);
    expect(familiesOf('ground').size).toBe(3);
    const at = (x: number, y: number) =>
      found.reading.slots[found.slotMap[y * width + x] as number];
    expect(at(215, 176)?.family).not.toBe(at(265, 176)?.family);
    expect(at(265, 176)?.lab[2]).toBeCloseTo(20, -0.5);
  });

  test('two colours are made one across its line too, and all of them', async () => {
    const { reading } = await read();
    const colourOf = (passage: string) => {
      const slot = reading.slots.find((s) => s.passage === passage);
      const lab = reading.families.find(({ id }) => id === slot?.family)?.lab as Lab;
      return [lab[1], lab[2]] as const;
    };
    const joined = await read({
      familyEdits: [{ join: [colourOf('ground'), colourOf('subject')] }],
    });
    sound(joined);
    expect(joined.reading.families.length).toBe(reading.families.length - 1);
    const one = await read({ familyEdits: [{ join: 'all' }] });
    expect(one.reading.families).toHaveLength(1);
  });

  test('a number she wishes for holds for the whole sheet', async () => {
    expect((await read({ families: 3 })).reading.families.length).toBeLessThanOrEqual(3);
  });

  test('what is proposed ends where she circles; without a circle there is one', async () => {
    expect((await read()).reading.proposedSubject).toBeNull();
    expect((await readFor(picture)).reading.proposedSubject).toMatchObject({ mode: 'circle' });
  });
});
