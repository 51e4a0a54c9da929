import { deflateRawSync } from 'node:zlib';
import { beforeAll, describe, expect, test } from 'vitest';
import { BackupProblem } from '../../../../app/storage/backup/backup-problem.ts';
import { CLIMBS } from '../../../../app/storage/backup/manifest.ts';
import { openBackup } from '../../../../app/storage/backup/open-backup.ts';
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

const endless = new AbortController().signal;
const megabyte = 1_000_000;
let store: Store;
let copy: Blob;
let files: Files;

beforeAll(async () => {
  store = await openStore({ name: 'open-backup' });
  await fillStore(store);
  copy = await copyOf(store);
  files = await filesOf(copy);
});

/** What is said of a copy; 'whole' where nothing is. */
async function said(file: Blob): Promise<string> {
  try {
    await (await store.backups()).check(endless, file);
    return 'whole';
  } catch (fault) {
    if (!(fault instanceof BackupProblem)) throw fault;
    return fault.kind;
  }
}

const changed = async (
  name: string,
  how: (value: ReturnType<typeof asJson>) => unknown,
  trueSums = true,
): Promise<Blob> => {
  const value = asJson(files.get(name));
  const next = how(value) ?? value;
  return packed(new Map(files).set(name, asText(next)), { trueSums });
};

test('a copy packed again is whole; other files are no copies', async () => {
  expect(await said(copy)).toBe('whole');
  expect(await said(await packed(files))).toBe('whole');
  expect(await said(new Blob([]))).toBe('not-a-copy');
  expect(await said(new Blob(['a photo of seed heads']))).toBe('not-a-copy');
  expect(await said(await packed(new Map([['a.json', asText({})]])))).toBe('damaged');
  const other = await changed('manifest.json', () => ({ format: 'another', version: 1 }));
  expect(await said(other)).toBe('not-a-copy');
});

describe('what a plan says', () => {
  const plan = 'paintings/0001/plan-0001.json';
  const saying = (what: object) =>
    changed(plan, (row) => {
      const [first, ...others] = row.plan.steps;
      row.plan.steps = [{ ...first, ...what }, ...others];
    });

  test.each<[object]>([
    [{ title: { say: 'title/dry' }, watch: [{ say: 'dry/damp' }], soften: [] }],
    [{ prompt: { say: 'puddles/mix', puddles: 2 }, cautions: [{ say: 'caution/blade' }, 'Mind.'] }],
    [{ brush: [{ say: 'brush/mop' }], board: { say: 'board/bead', degrees: 15 } }],
    [{ brush: 'a round 8; a rigger', notes: ['Less water.'], consequence: { say: 'white/lost' } }],
  ])('%j is whole', async (what) => expect(await said(await saying(what))).toBe('whole'));

  test.each<[object]>([
    [{ prompt: { say: 'no/such' } }],
    [{ prompt: { say: 'accents/set' } }],
    [{ title: { say: 'caution/blade' } }],
    [{ title: [{ say: 'title/dry' }] }],
    [{ watch: [{ say: 'constructor' }] }],
    [{ brush: [{ say: 'board/flat' }] }],
    [{ notes: [7] }],
    [{ touches: [{ technique: 'lifting', text: {} }] }],
  ])('%j is damaged', async (what) => expect(await said(await saying(what))).toBe('damaged'));
});

test('a copy of a newer version is refused by that, whatever else it holds', async () => {
  const newer = await changed('manifest.json', () => ({
    format: 'firstwash copy',
    version: CLIMBS.length + 2,
  }));
  expect(await said(newer)).toBe('newer');
  const none = await changed('manifest.json', (manifest) => ({ ...manifest, version: 0 }));
  expect(await said(none)).toBe('not-a-copy');
});

test('an older version climbs to the present one, manifest and files', async () => {
  const climbs = [
    {
      manifest: (before: Readonly<Record<string, unknown>>) => ({ ...before, places: false }),
      file: (kind: string, before: unknown) => (kind === 'box' ? { climbed: before } : before),
    },
    {
      manifest: (before: Readonly<Record<string, unknown>>) => ({ ...before }),
      file: (_: string, before: unknown) => before,
    },
  ];
  const old = await changed('manifest.json', ({ places: _, ...manifest }) => ({
    ...manifest,
    version: 1,
  }));
  const opened = await openBackup(endless, old, climbs);
  expect(opened.manifest.places).toBe(false);
  expect(await opened.row(endless, 'box.json')).toEqual({ climbed: asJson(files.get('box.json')) });
  await expect(openBackup(endless, old)).rejects.toMatchObject({ kind: 'damaged' });
});

describe('nothing of it is believed', () => {
  const path = 'paintings/0001/';
  const refused: Record<string, () => Promise<Blob>> = {
    'a sum that does not fit': () =>
      changed(
        'manifest.json',
        (m) => Object.assign(m.files[0], { sha256: 'a'.repeat(64) }) && m,
        false,
      ),
    'a size that does not fit': () =>
      changed('manifest.json', (m) => Object.assign(m.files[0], { bytes: 1 }) && m, false),
    'a file named twice': () => changed('manifest.json', (m) => void m.files.push(m.files[0])),
    'a file more than it names': () =>
      packed(new Map(files).set(`${path}plan-0002.json`, asText({}))),
    'a name that leads out': () => packed(new Map(files).set('../box.json', asText({}))),
    'a folder nobody names': () => changed('manifest.json', (m) => void m.paintings.pop()),
    'a painting twice': async () => {
      const out = new Map(files);
      for (const [name, bytes] of files)
        if (name.startsWith('paintings/0002/')) out.set(name.replace('0002', '0003'), bytes);
      const manifest = asJson(files.get('manifest.json'));
      manifest.paintings.push({ folder: '0003', title: 'again' });
      for (const file of [...manifest.files])
        if (file.name.startsWith('paintings/0002/'))
          manifest.files.push({ ...file, name: file.name.replace('0002', '0003') });
      const row = asJson(out.get('paintings/0003/painting.json'));
      row.photos[0].file = row.photos[0].file.replace('0002', '0003');
      out.set('paintings/0003/painting.json', asText(row));
      return packed(out.set('manifest.json', asText(manifest)));
    },
    'a plan of another painting': () =>
      changed(`${path}plan-0001.json`, (row) => ({ ...row, paintingId: 'b' })),
    'a line twice': () =>
      changed(`${path}painting.json`, (row) => void row.events.push(row.events[0])),
    'a line of a session that is not there': () =>
      changed(`${path}painting.json`, (row) => ({ ...row, sessions: [] })),
    'a photo nobody asks for': () =>
      changed(
        `${path}painting.json`,
        (row) => Object.assign(row.photos[0], { id: 'another' }) && row,
      ),
    'a photo of another painting': () =>
      changed(
        `${path}painting.json`,
        (row) => Object.assign(row.photos[0], { file: 'paintings/0002/photo-0001.jpg' }) && row,
      ),
    'an endless figure': async () => {
      const text = new TextDecoder().decode(files.get(`${path}painting.json`));
      return packed(
        new Map(files).set(
          `${path}painting.json`,
          new TextEncoder().encode(text.replace(/"updatedAt":\d+/, '"updatedAt":1e999')),
        ),
      );
    },
    'a field that reaches behind objects': async () => {
      const text = new TextDecoder().decode(files.get('box.json'));
      return packed(
        new Map(files).set(
          'box.json',
          new TextEncoder().encode(text.replace('{', '{"__proto__":{"polluted":true},')),
        ),
      );
    },
    'an address within an id': () =>
      changed(
        `${path}painting.json`,
        (row) => Object.assign(row.painting, { id: 'a/plan' }) && row,
      ),
    'a decision of no kind': () =>
      changed(
        `${path}painting.json`,
        (row) => Object.assign(row.painting.decisions[0], { kind: 'x' }) && row,
      ),
    'a paint no light comes out of': () =>
      changed('box.json', (box) => void box.paints[0].K.splice(3, 1, 1e308)),
    'paints without a spectrum': () => changed('box.json', (box) => void box.paints[0].K.pop()),
    'a setting of another name': () =>
      changed('settings.json', (rows) => ({ ...rows, 'last copy': { at: 1 } })),
    'JSON cut short': () => packed(new Map(files).set('box.json', new TextEncoder().encode('{"a'))),
    'text that is none': () => packed(new Map(files).set('box.json', new Uint8Array([0xff, 0xfe]))),
  };

  test.each(Object.keys(refused))('%s', async (name) => {
    const file = await refused[name]?.();
    expect(await said(file ?? new Blob())).toBe('damaged');
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
});

test('cut short at any place it is refused', async () => {
  for (let length = copy.size - 1; length > 0; length -= 1 + Math.floor(copy.size / 40))
    expect(['damaged', 'not-a-copy']).toContain(await said(copy.slice(0, length)));
});

describe('what would fill up the device', () => {
  /** How much more memory there was at most while something was done, bytes. */
  async function moreMemory(work: () => Promise<void>): Promise<number> {
    const before = process.memoryUsage().rss;
    let most = before;
    const look = (): void => {
      most = Math.max(most, process.memoryUsage().rss);
    };
    const timer = setInterval(look, 1);
    await work();
    look();
    clearInterval(timer);
    return most - before;
  }

  /** 200 MB of blanks, deflated: 200 kB. */
  const blanks = deflateRawSync(Buffer.alloc(200 * megabyte, 0x20), { level: 9 });

  /** A ZIP of one file by hand (PKWARE APPNOTE 6.3.10), whose directory may say what it likes of its size. */
  function bomb(name: string, saidBytes: number): Blob {
    const title = Buffer.from(name);
    const facts = Buffer.alloc(26);
    facts.writeUInt16LE(20, 0);
    facts.writeUInt16LE(8, 4); // deflated
    facts.writeUInt32LE(blanks.length, 14);
    facts.writeUInt32LE(saidBytes, 18);
    facts.writeUInt16LE(title.length, 22);
    const local = Buffer.concat([Buffer.from('PK\x03\x04'), facts, title, blanks]);
    const central = Buffer.concat([
      Buffer.from('PK\x01\x02\x14\x00'),
      facts,
      Buffer.alloc(14),
      title,
    ]);
    const end = Buffer.alloc(22);
    end.write('PK\x05\x06', 'latin1');
    end.writeUInt16LE(1, 8);
    end.writeUInt16LE(1, 10);
    end.writeUInt32LE(central.length, 12);
    end.writeUInt32LE(local.length, 16);
    return new Blob([local, central, end]);
  }

  test.each([
    ['its manifest', 'manifest.json', 200 * megabyte],
    ['a manifest that says it is small', 'manifest.json', megabyte],
    ['a manifest as large as it may be', 'manifest.json', 16 * megabyte],
    ['a painting', 'paintings/0001/painting.json', 200 * megabyte],
    ['a photo, which is never packed', 'paintings/0001/photo-0001.jpg', 200 * megabyte],
  ])('200 MB in %s: refused under 64 MB more memory', async (place, name, saidBytes) => {
    const file = bomb(name, saidBytes);
    expect(file.size).toBeLessThan(megabyte);
    const more = await moreMemory(async () => {
      expect(await said(file)).toBe('damaged');
    });
    console.log(`200 MB in ${place}: ${(more / megabyte).toFixed(0)} MB more memory`);
    expect(more).toBeLessThan(64 * megabyte);
  });

  test('200 MB in the map of a reading: refused under 64 MB more memory', async () => {
    const name = 'paintings/0001/reading-0001.json';
    const file = await changed(name, (row) => {
      row.slotMap.bytes.base64 = blanks.toString('base64');
    });
    const more = await moreMemory(async () => {
      expect(await said(file)).toBe('damaged');
    });
    console.log(`a map of 200 MB: ${(more / megabyte).toFixed(0)} MB more memory`);
    expect(more).toBeLessThan(64 * megabyte);
  });
});
