import { expect, test } from 'vitest';
import {
  partDone,
  readingStages,
  type StageName,
  staged,
} from '../../../../app/core/reading/reading-stages.ts';

const names = Object.keys(readingStages) as StageName[];

test('the stages follow each other without a gap, to the whole', () => {
  let before = 0;
  for (const name of names) {
    expect(partDone(name, 0)).toBe(before);
    expect(readingStages[name].ends).toBeGreaterThan(before);
    before = readingStages[name].ends;
    expect(partDone(name, readingStages[name].pieces)).toBeCloseTo(before, 12);
    expect(partDone(name, 1000)).toBeCloseTo(before, 12);
  }
  expect(before).toBe(1);
});

test('every piece of a stage is followed by a checkpoint, and its answer is handed on', async () => {
  const told: string[] = [];
  function* work(): Generator<void, string> {
    yield;
    yield;
    return 'done';
  }
  const checkpoint = async (part: number, phase: string, stage: string) => {
    told.push(`${stage}: ${phase}`);
    expect(part).toBeLessThanOrEqual(1);
  };
  expect(await staged(work(), checkpoint, 'edges')).toBe('done');
  expect(told).toEqual(['edges: shapes', 'edges: shapes', 'edges: shapes']);
});
