import { expect, test } from 'vitest';
import { openStore } from '../../../../app/storage/open-store.ts';
import { seeded } from '../../../support/reading/seeded.ts';
import { copyOf, filesOf, fillStore, packed } from '../../../support/storage/made-backup.ts';

test('a photo that is read in many pieces arrives whole', async () => {
  const store = await openStore({ name: 'open-backup pieces' });
  await fillStore(store);
  const files = await filesOf(await copyOf(store));
  const name = 'paintings/0001/photo-0001.jpg';
  const photo = files.get(name);
  // As long as a photo of a camera: what follows the picture's end is let be.
  const random = seeded(1);
  const long = Uint8Array.from({ length: 400_000 }, (_, i) => photo?.[i] ?? 256 * random());
  const copy = await packed(files.set(name, long));
  const { backup } = await (await store.backups()).check(new AbortController().signal, copy);
  const read = await backup.bytes(new AbortController().signal, name);
  expect(Buffer.from(read).equals(Buffer.from(long))).toBe(true);
});
