import { beforeAll, describe, expect, test } from 'vitest';
import { BackupProblem } from '../../../../app/storage/backup/backup-problem.ts';
import { openStore, type Store } from '../../../../app/storage/open-store.ts';
import {
  asJson,
  asText,
  copyOf,
  type Files,
  filesOf,
  fillStore,
  packed,
} from '../../../support/storage/made-backup.ts';

let store: Store;
let files: Files;

beforeAll(async () => {
  store = await openStore({ name: 'open-backup-reading' });
  await fillStore(store);
  files = await filesOf(await copyOf(store));
});

/** What is said of the copy with a reading that says `what`; 'whole' where nothing is. */
async function said(what: object): Promise<string> {
  const path = 'paintings/0001/reading-0001.json';
  const row = asJson(files.get(path));
  const saying = asText({ ...row, reading: { ...row.reading, ...what } });
  try {
    const copy = await packed(new Map(files).set(path, saying), { trueSums: true });
    await (await store.backups()).check(new AbortController().signal, copy);
    return 'whole';
  } catch (fault) {
    if (!(fault instanceof BackupProblem)) throw fault;
    return fault.kind;
  }
}

describe('what a reading says', () => {
  test.each<[object]>([
    [{ warnings: [{ code: 'flat' }, { code: 'clipped-light', share: 0.04 }] }],
    [{ warnings: [{ code: 'flat', text: 'As it was said before.' }] }],
    [{ bandsWhy: { why: 'clear' }, whites: [{ why: { why: 'tiny', mm: 1 } }, { why: 'Small.' }] }],
  ])('%j is whole', async (what) => expect(await said(what)).toBe('whole'));

  test.each<[object]>([
    [{ warnings: [{ code: 'no-such' }] }],
    [{ warnings: [{ code: 'constructor' }] }],
    [{ warnings: [{ code: 'clipped-light' }] }],
    [{ warnings: [{ code: 'flat', text: 7 }] }],
    [{ warnings: [null] }],
    [{ bandsWhy: { why: 'no such' } }],
    [{ whites: [{ why: { why: 'tiny' } }] }],
  ])('%j is damaged', async (what) => expect(await said(what)).toBe('damaged'));
});
