import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { openStore } from '../../../../app/storage/open-store.ts';
import { bringBack, copyOf, fillStore, madeBox } from '../../../support/storage/made-backup.ts';

const file = resolve(import.meta.dirname, '../../../fixtures/copy-v1.zip');

// Written once by version 1 of the format and never again: copies may be years old. UPDATE=1 only makes a lost one anew.
test('a copy of version 1 comes back whole, whatever the version is by now', async () => {
  if (process.env.UPDATE) {
    const source = await openStore({ name: 'version 1 source', readTimeMs: () => 7000 });
    await fillStore(source);
    writeFileSync(file, new Uint8Array(await (await copyOf(source)).arrayBuffer()));
  }
  const store = await openStore({ name: 'version 1', readTimeMs: () => 7000 });
  await bringBack(store, new Blob([readFileSync(file)]));
  expect((await store.cards()).map(({ id }) => id).sort()).toEqual(['a', 'b']);
  expect((await store.painting('a'))?.decisions.map(({ kind }) => kind)).toEqual([
    ...['bands', 'subject'],
  ]);
  expect((await store.session('s a')).plan.steps[0]?.look).toEqual(
    new Uint8ClampedArray([1, 2, 255]),
  );
  expect((await store.events('s a')).map(({ what }) => what.kind)).toEqual([
    ...['started', 'step-begun', 'photo', 'note'],
  ]);
  expect(await store.photo('record a')).not.toBeNull();
  expect(await store.setting('paint box')).toEqual(madeBox);
});
