import { expect, test } from 'vitest';
import type { Step } from '../../../../app/core/plan/plan.ts';
import type { OpenedReading } from '../../../../app/state/painting/opened-reading.ts';
import { shapesPointedAt } from '../../../../app/ui/picture/step-layers.ts';
import { madeReading } from '../../../support/plan/made-reading.ts';

/** Ground left, subject right, of one colour and value; they touch. */
const raster = { width: 40, height: 30 };
const reading = madeReading(
  ['ground', 'subject'].map((passage) => ({
    passage,
    band: 1,
    family: 1,
    share: 0.5,
    lab: [50, 0, 0],
  })),
);
const slotMap = Uint8Array.from({ length: 1200 }, (_, i) => (i % 40 < 20 ? 0 : 1));
const seen = { reading: { ...reading, raster }, slotMap } as unknown as OpenedReading;
const pointedAt = (key: string): number =>
  shapesPointedAt(seen, { key, kind: 'wash', slots: [0, 1] } as unknown as Step).length;

test('what is painted from one mix and touches is one shape, across the line too where both are painted together', () => {
  expect(pointedAt('wash/sheet/1')).toBe(1);
  expect(pointedAt('wash/ground/1')).toBe(2);
});
