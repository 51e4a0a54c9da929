import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Bench } from '../../bench/bench.ts';
import { top } from './source-files.ts';

const folder = join(top, 'tests', 'bench');
const benches = readdirSync(folder).filter((name) => name.endsWith('.bench.ts'));

test('there are benches', () => {
  expect(benches.length).toBeGreaterThan(0);
});

// Once through each, so that they cannot rot; the times are not judged here.
test.each(benches)('%s still runs', { timeout: 60_000 }, async (name) => {
  const { bench } = (await import(join(folder, name))) as { bench: () => Bench | Promise<Bench> };
  const { ours, peer, agreement } = await bench();
  expect([await ours.run(), await peer.run()]).not.toContain(undefined);
  expect(agreement).not.toMatch(/NaN|Infinity|undefined/);
});
