import { expect, test } from 'vitest';
import { idleTurn, runJob } from '../../../workers/jobs.ts';

test('work ahead of need waits until no job is running', async () => {
  const order: string[] = [];
  const ends: (() => void)[] = [];
  const job = (n: number): Promise<number> =>
    runJob(n, async (pause) => {
      await pause();
      order.push(`job ${n}`);
      await new Promise<void>((resolve) => ends.push(resolve));
      return ends.length;
    });
  const jobs = [job(1), job(2)];
  const ahead = idleTurn().then(() => order.push('ahead'));
  while (order.length < 2) await new Promise((resolve) => setTimeout(resolve, 1));
  ends[0]?.();
  await jobs[0];
  await new Promise((resolve) => setTimeout(resolve, 5));
  expect(order).toEqual(['job 1', 'job 2']);
  ends[1]?.();
  await Promise.all([...jobs, ahead]);
  expect(order).toEqual(['job 1', 'job 2', 'ahead']);
});
