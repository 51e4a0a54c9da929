import fc from 'fast-check';
import type { MadeSlot } from './made-reading.ts';

const slot = fc.record({
  band: fc.integer({ min: 1, max: 7 }),
  family: fc.integer({ min: 1, max: 6 }),
  share: fc.double({ min: 0, max: 1, noNaN: true }),
  lab: fc.tuple(
    fc.double({ min: 0, max: 100, noNaN: true }),
    fc.double({ min: -60, max: 60, noNaN: true }),
    fc.double({ min: -60, max: 60, noNaN: true }),
  ),
  passage: fc.constantFrom('ground', 'subject'),
  shapes: fc.integer({ min: 1, max: 200 }),
  smallShapes: fc.integer({ min: 0, max: 200 }),
});

/** Any slots of at most seven bands, six families, two passages, and any borders between them. */
export const anyReading = fc
  .tuple(
    fc.uniqueArray(slot, {
      minLength: 1,
      maxLength: 16,
      selector: ({ passage, band, family }) => `${passage} ${band} ${family}`,
    }),
    fc.array(
      fc.record({
        a: fc.nat(15),
        b: fc.nat(15),
        lengthMm: fc.double({ min: 0, max: 2000, noNaN: true }),
        soft: fc.double({ min: 0, max: 1, noNaN: true }),
        lost: fc.double({ min: 0, max: 1, noNaN: true }),
        contrast: fc.double({ min: 0, max: 80, noNaN: true }),
      }),
      { maxLength: 12 },
    ),
  )
  .map(([slots, borders]) => ({
    // As a reading has them: the lighter band is lighter.
    slots: slots.map((one): MadeSlot => {
      const [lightness, a, b] = one.lab;
      return { ...one, lab: [Math.max(0, 100 - one.band * 13 + (lightness - 50) / 10), a, b] };
    }),
    borders: borders.filter(({ a, b }) => a !== b && a < slots.length && b < slots.length),
  }));
