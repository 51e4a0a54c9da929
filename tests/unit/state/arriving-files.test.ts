import { expect, test, vi } from 'vitest';
import { takeArrivingFiles } from '../../../app/state/arriving-files.ts';

const zip = new File(['PK\u0003\u0004 and so on'], 'from a mail', { type: '' });
const photo = (name: string) => new File(['a photo'], name, { type: 'image/jpeg' });

type Launch = { files?: { getFile(): Promise<File> }[] };

/** What comes of files that are opened with the app, and of those a share sheet has left. */
async function taken(
  opened: readonly File[],
  { shared = [], welcome = true }: { shared?: readonly File[]; welcome?: boolean } = {},
) {
  const onPhotos = vi.fn();
  const onCopy = vi.fn();
  const kept = new Map(
    shared.map((file, i) => {
      const headers = { 'x-name': encodeURIComponent(file.name), 'content-type': file.type };
      return [`shared-${i}`, new Response(file, { headers })];
    }),
  );
  const cache = {
    keys: async () => [...kept.keys()],
    match: async (name: string) => kept.get(name),
    delete: async (name: string) => kept.delete(name),
  };
  const launchQueue = {
    setConsumer: (take: (launch: Launch) => void) =>
      take(opened.length ? { files: opened.map((file) => ({ getFile: async () => file })) } : {}),
  };
  const window = { launchQueue, caches: { open: async () => cache } };
  takeArrivingFiles({ window: window as never, welcome: () => welcome, onPhotos, onCopy });
  await expect.poll(() => kept.size).toBe(0);
  await new Promise((done) => setTimeout(done));
  return { onPhotos, onCopy };
}

test('a copy is told by its bytes, whatever it is called; all else is taken for photos', async () => {
  const one = await taken([zip]);
  expect(one.onCopy).toHaveBeenCalledWith(zip);
  expect(one.onPhotos).not.toHaveBeenCalled();
  const some = await taken([photo('a.zip'), photo('b.jpg')]);
  expect(some.onCopy).not.toHaveBeenCalled();
  expect(some.onPhotos.mock.calls[0]?.[0]).toHaveLength(2);
});

test('what was shared before the window was there is taken once, under its name', async () => {
  const { onPhotos } = await taken([], { shared: [photo('snow, on a hill é.jpg')] });
  await expect.poll(() => onPhotos.mock.calls.length).toBe(1);
  const [[[file]]] = onPhotos.mock.calls as [[File[]]];
  expect([file?.name, file?.type]).toEqual(['snow, on a hill é.jpg', 'image/jpeg']);
  expect(await file?.text()).toBe('a photo');
});

test('nothing pushes a session off the screen, and an ordinary start brings nothing', async () => {
  const away = await taken([zip], { shared: [photo('a')], welcome: false });
  expect([away.onCopy.mock.calls, away.onPhotos.mock.calls]).toEqual([[], []]);
  const usual = await taken([]);
  expect([usual.onCopy.mock.calls, usual.onPhotos.mock.calls]).toEqual([[], []]);
});

test('where all storage is shut off, or files are taken away in between, nothing happens', async () => {
  const onPhotos = vi.fn();
  const unhandled = vi.fn();
  process.on('unhandledRejection', unhandled);
  const gone = async () => {
    throw new DOMException('gone', 'NotFoundError');
  };
  const shut = {
    launchQueue: {
      setConsumer: (take: (launch: Launch) => void) => take({ files: [{ getFile: gone }] }),
    },
    get caches(): CacheStorage {
      throw new DOMException('The operation is insecure.', 'SecurityError');
    },
  };
  const needs = { welcome: () => true, onPhotos, onCopy: onPhotos };
  takeArrivingFiles({ window: shut as never, ...needs });
  takeArrivingFiles({ window: {} as never, ...needs });
  await new Promise((done) => setTimeout(done));
  process.off('unhandledRejection', unhandled);
  expect([onPhotos.mock.calls, unhandled.mock.calls]).toEqual([[], []]);
});
