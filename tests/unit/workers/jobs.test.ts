import { expect, test } from 'vitest';
import { idleTurn, nextTurn, runJob } from '../../../workers/jobs.ts';

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
  await expect.poll(() => order.length).toBe(2);
  ends[0]?.();
  await jobs[0];
  for (let turn = 0; turn < 3; turn++) await nextTurn(); // it had its chance to come too early
  expect(order).toEqual(['job 1', 'job 2']);
  ends[1]?.();
  await Promise.all([...jobs, ahead]);
  expect(order).toEqual(['job 1', 'job 2', 'ahead']);
});
