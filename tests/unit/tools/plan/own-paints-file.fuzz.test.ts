import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { knownPaints, paintBox } from '../../../../app/core/paint/paint-box.ts';
import { paintsAllowed } from '../../../../app/core/palette/paints-allowed.ts';
import { buildPlan } from '../../../../app/core/plan/build-plan.ts';
import { readOwnPaints } from '../../../../app/tools/plan/own-paints-file.ts';
import {
  CommandError,
  planOptions,
  wishesFromOptions,
} from '../../../../app/tools/plan/plan-options.ts';
import { onOneLine } from '../../../../app/tools/plan/run-plan.ts';
import { runs } from '../../../support/more-runs.ts';
import { madeReading, tableOf } from '../../../support/plan/made-reading.ts';
import { warmMemory } from '../../../support/plan/warm-memory.ts';
import { seeded } from '../../../support/seeded.ts';
import { spoiltBytes } from '../../../support/spoilt-bytes.ts';
import { changeJson } from '../../../support/storage/mutate-backup.ts';

const seed = 20_261_130;

/** A file as somebody would write it: three built-in paints under other names. */
const wholeFile = new TextEncoder().encode(
  JSON.stringify({
    paints: paintBox
      .filter(({ ci }) => ci.length > 0)
      .slice(0, 3)
      .map(({ name, ci, K, S, strength, mostLoad, properties }, i) => ({
        ...{ id: `mine-${i}`, name, ci, K, S, strength, mostLoad, properties },
      })),
  }),
);

/** Odd figures where figures are, besides what any JSON may suffer. */
function spoiltFile(each: number): Uint8Array {
  const random = seeded(each);
  if (random() < 0.25) return spoiltBytes(random, wholeFile);
  if (random() < 0.5) {
    const odd = ['0', '1e308', '5e-324', '-1', '1e999', 'null', '"1"', '1e6', '[]', '{}', '0.5'];
    const text = new TextDecoder().decode(wholeFile);
    const figures = [...text.matchAll(/-?\d+(\.\d+)?(e-?\d+)?(?=[,\]}])/g)];
    const found = figures[Math.floor(random() * figures.length)];
    const put = odd[Math.floor(random() * odd.length)];
    const at = found?.index ?? 0;
    return new TextEncoder().encode(
      `${text.slice(0, at)}${put}${text.slice(at + (found?.[0].length ?? 0))}`,
    );
  }
  const files = new Map([['paints.json', new Uint8Array(wholeFile)]]);
  changeJson(random, files);
  return files.get('paints.json') ?? wholeFile;
}

const landscape = madeReading(
  tableOf(
    [94, 66, 30],
    [
      [-10, 22],
      [2, -18],
    ],
  ),
);

// RUNS=50 before the command makes it 500; what comes out is printed.
test('a file of paints spoilt in any way is planned with, or refused in one line', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'spoilt-paints-'));
  const file = join(folder, 'paints.json');
  const ids = paintBox.map(({ id }) => id);
  let [planned, refused] = [0, 0];
  await fc.assert(
    fc.asyncProperty(fc.integer(), async (each) => {
      writeFileSync(file, spoiltFile(each));
      const options = planOptions(['photo.jpg', '--paints', file]);
      try {
        const own = await readOwnPaints(file);
        const wishes = wishesFromOptions(options, ids, own);
        paintsAllowed(knownPaints(own), wishes);
        const plan = await buildPlan(landscape, wishes, async () => {}, warmMemory());
        for (const { after } of plan.steps) expect(after.flat().every(Number.isFinite)).toBe(true);
        planned++;
      } catch (fault) {
        expect(fault).toBeInstanceOf(CommandError); // any other would be a stack trace
        const line = onOneLine((fault as Error).message);
        expect(line).toMatch(/^--paints [^\n\r]{10,}$/);
        expect(line).not.toMatch(/Error\b|undefined|NaN|\[object/);
        refused++;
      }
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
    }),
    { ...runs(10, seed), seed },
  );
  rmSync(folder, { recursive: true, force: true });
  console.log(`spoilt files of paints: ${planned} planned with, ${refused} refused`);
  expect(Math.min(planned, refused)).toBeGreaterThan(0);
});
