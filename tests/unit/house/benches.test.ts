import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Bench, BenchSetting } from '../../bench/bench.ts';
import { seededPicture } from '../../bench/seeded-picture.ts';
import { top } from './source-files.ts';

const folder = join(top, 'tests', 'bench');
const benches = readdirSync(folder).filter((name) => name.endsWith('.bench.ts'));

test('there are benches', () => {
  expect(benches.length).toBeGreaterThan(0);
});

/** What a bench file holds. */
interface BenchModule {
  readonly bench: (setting: BenchSetting) => Bench | Promise<Bench>;
  readonly needsOpenCv?: true;
}

// Once through each, so that they cannot rot; the times are not judged here. A library that only the
// bench command installs is left out: then our side runs alone.
test.each(benches)('%s still runs', { timeout: 60_000 }, async (name) => {
  const { bench, needsOpenCv } = (await import(join(folder, name))) as BenchModule;
  const { ours, peer, agreement } = await bench({ photo: seededPicture(160, 120, 7) });
  expect(await ours.run()).not.toBe(undefined);
  if (needsOpenCv) expect(peer).toBe(undefined);
  else expect(await peer?.run()).not.toBe(undefined);
  expect(agreement).not.toMatch(/NaN|Infinity|undefined/);
});
