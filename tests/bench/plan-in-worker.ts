// The plan from a reading, timed where it runs: with nothing kept, again with its paints chosen, and a change of
// hers with what the plan before found out.
import type { Reading } from '../../app/model/reading.ts';
import type { PlanWishes } from '../../app/model/wash-plan.ts';
import { noCheckpoint } from '../../workers/kernels/palette/checkpoint.ts';
import { buildWashPlan } from '../../workers/kernels/plan/build-wash-plan.ts';
import { createPlanMemory } from '../../workers/kernels/plan/plan-memory.ts';
import forest from '../fixtures/readings/forest-stream.json';
import snow from '../fixtures/readings/mountain-snow.json';
import seeds from '../fixtures/readings/seed-heads.json';

export interface PlanTimes {
  readonly name: string;
  readonly mixes: number;
  /** ms: the paints searched in a fresh worker (first picture only) or with the box's mixes kept. */
  readonly searched: number;
  /** ms, every round: the paints chosen. */
  readonly chosen: readonly number[];
  /** ms, every round: a step left out of the plan before, or put back. */
  readonly changed: readonly number[];
}

const readings = { 'seed heads': seeds, 'mountain snow': snow, 'forest stream': forest };

self.onmessage = async ({ data }: MessageEvent<{ readonly rounds: number }>) => {
  const times: PlanTimes[] = [];
  for (const [name, kept] of Object.entries(readings)) {
    const reading = kept as unknown as Reading;
    const memory = createPlanMemory();
    const timed = async (wishes: PlanWishes, from = memory) => {
      const since = performance.now();
      const plan = await buildWashPlan(reading, wishes, noCheckpoint, from);
      return { plan, ms: performance.now() - since };
    };
    const { plan, ms: searched } = await timed({});
    const paints = plan.palette.map(({ id }) => id);
    const chosen: number[] = [];
    const changed: number[] = [];
    for (let round = 0; round < data.rounds; round++) {
      chosen.push((await timed({ chosen: paints }, createPlanMemory())).ms);
      const edit = { kind: 'skip', key: 'accents/sheet/0', skipped: round % 2 === 0 } as const;
      changed.push((await timed({ edits: [edit] })).ms);
    }
    const mixes = plan.mixes.filter(({ parts }) => parts.length > 0).length;
    times.push({ name, mixes, searched, chosen, changed });
  }
  self.postMessage({ times });
};
