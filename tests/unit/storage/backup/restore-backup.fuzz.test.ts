import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BackupProblem } from '../../../../app/storage/backup/backup-problem.ts';
import { openStore } from '../../../../app/storage/open-store.ts';
import { runs } from '../../../support/more-runs.ts';
import { paintingSample, photoSample } from '../../../support/storage/kept-samples.ts';
import {
  bringBack,
  copyOf,
  everythingIn,
  filesOf,
  fillStore,
} from '../../../support/storage/made-backup.ts';
import { mutated } from '../../../support/storage/mutate-backup.ts';

const seed = 20_261_130;
let made = 0;

/** Where the copies arrive: a painting of its own, and 'b' as it is in the copy but called otherwise. */
async function madeHere() {
  const name = `fuzz ${made++}`;
  const store = await openStore({ name, readTimeMs: () => 9000 });
  await store.addPainting(paintingSample('mine', 'my photo', 3), photoSample('my photo', 20));
  await store.addPainting(paintingSample('b', 'photo of b', 3), photoSample('photo of b', 20));
  return { name, store, before: await everythingIn(name) };
}

const namesOfObjects = (): string =>
  [Object.prototype, Array.prototype, Function.prototype]
    .map((each) => Object.getOwnPropertyNames(each).sort().join())
    .join();

// RUNS=125 before the command makes it 10,000; what comes out is printed.
test('a copy spoilt in any way is refused whole with one sentence, or brought back whole', async () => {
  const source = await openStore({ name: 'fuzz source', readTimeMs: () => 7000 });
  await fillStore(source);
  const copy = await copyOf(source);
  const whole = await filesOf(copy);
  const names = namesOfObjects();
  const tally: Record<string, number> = {};
  const ways: Record<string, 'merge' | 'replace'> = { 0: 'merge', 1: 'replace' };
  let here = await madeHere();

  await fc.assert(
    fc.asyncProperty(fc.integer(), async (each) => {
      const spoilt = await mutated(each, copy, whole);
      const way = ways[Math.abs(each % 2)] ?? 'merge';
      let outcome = 'brought back';
      try {
        await bringBack(here.store, spoilt, way);
      } catch (fault) {
        // Any other fault is a crash.
        expect(fault).toBeInstanceOf(BackupProblem);
        expect((fault as BackupProblem).message).toMatch(/^[A-Z][^{}<>]{30,}\.$/);
        outcome = (fault as BackupProblem).kind;
        expect(await everythingIn(here.name)).toEqual(here.before);
      }
      expect(namesOfObjects()).toBe(names);
      expect(({} as Record<string, unknown>).polluted).toBeUndefined();
      expect(here.store.saving.value).toBe('saved');
      tally[outcome] = (tally[outcome] ?? 0) + 1;
      if (outcome !== 'brought back') return;
      const after = await everythingIn(here.name);
      if (way === 'merge')
        for (const [table, rows] of Object.entries(here.before))
          expect(after[table]?.length ?? 0, table).toBeGreaterThanOrEqual(rows.length);
      for (const { id, damaged } of await here.store.cards()) {
        expect(damaged).toBeUndefined();
        expect((await here.store.painting(id))?.id).toBe(id);
        for (const sessionId of (await here.store.painting(id))?.sessionIds ?? [])
          await here.store.events(sessionId);
      }
      await here.store.pastSessions();
      here.store.close();
      here = await madeHere();
    }),
    { ...runs(80, seed), seed },
  );
  console.log('spoilt copies:', JSON.stringify(tally));
  expect(tally.damaged).toBeGreaterThan(20);
});
