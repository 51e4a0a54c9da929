import { noCheckpoint } from '../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../app/core/plan/build-plan.ts';
import type { WashPlan } from '../../../app/core/plan/plan.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';
import forest from '../../fixtures/readings/forest-stream.json';
import snow from '../../fixtures/readings/mountain-snow.json';
import seeds from '../../fixtures/readings/seed-heads.json';
import { madeOnce } from '../made-once.ts';
import { madeReading, tableOf } from './made-reading.ts';
import { warmMemory } from './warm-memory.ts';

/** Readings of photographs as this app made them, and of pictures by hand. */
export const readings: Readonly<
  Record<
    'landscape' | 'low key' | 'high key' | 'seed heads' | 'mountain snow' | 'forest stream',
    Reading
  >
> = {
  landscape: madeReading(
    tableOf(
      [96, 74, 52, 28],
      [
        [-14, 26],
        [2, -24],
        [8, 22],
        [0, 3],
      ],
    ),
  ),
  'low key': madeReading(
    tableOf(
      [70, 40, 24, 12],
      [
        [4, 10],
        [-6, -12],
        [10, 14],
        [0, 0],
      ],
    ),
  ),
  'high key': madeReading(
    tableOf(
      [98, 92, 84, 74],
      [
        [6, 6],
        [-4, -10],
        [-8, 14],
      ],
    ),
    [],
    'photographed',
  ),
  // As this app read the three example photos (long side 800 px, quarter sheet).
  'seed heads': seeds as unknown as Reading,
  'mountain snow': snow as unknown as Reading,
  'forest stream': forest as unknown as Reading,
};

/** Their plans with nothing wished for, each built once for all tests. */
export const builtPlans: Readonly<Record<string, () => Promise<WashPlan>>> = Object.fromEntries(
  Object.entries(readings).map(([name, reading]) => [
    name,
    () => madeOnce(`plan of ${name}`, () => buildPlan(reading, {}, noCheckpoint, warmMemory())),
  ]),
);
