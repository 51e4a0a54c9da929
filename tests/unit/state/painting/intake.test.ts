import { describe, expect, test, vi } from 'vitest';
import type { Painting } from '../../../../app/core/decisions/painting.ts';
import { photoHeader, uprightSize } from '../../../../app/core/reference/photo-header.ts';
import type { Sheet } from '../../../../app/core/reference/sheet.ts';
import {
  createIntake,
  createPainting,
  readPhotoFile,
  takeDropsAndPastes,
} from '../../../../app/state/painting/intake.ts';
import { greyPng } from '../../../support/png.ts';
import { faultOf, madeStore } from '../../../support/state/made-store.ts';

const photoOf = (width: number, height: number, name: string): File =>
  new File([new Uint8Array(greyPng(width, height, 120))], name);
/** As the worker finds it; these files have no turn. */
const photoSize = async (photo: Blob) => {
  const header = photoHeader(new Uint8Array(await Blob.prototype.arrayBuffer.call(photo)));
  return header ? uprightSize(header) : { width: 0, height: 0 };
};
const across = photoOf(400, 300, 'seed heads.jpg');
const note = new File(['a shopping list'], 'list.txt');

describe('a photo', () => {
  test('is kept byte for byte, under the digest of its bytes', async () => {
    const { photo, header } = await readPhotoFile(across);
    expect(new Uint8Array(photo.bytes)).toEqual(new Uint8Array(await across.arrayBuffer()));
    expect([photo.mime, photo.name, header.width, header.height]).toEqual([
      'image/png',
      'seed heads.jpg',
      400,
      300,
    ]);
    const { createHash } = await import('node:crypto');
    expect(photo.sha256).toBe(
      createHash('sha256').update(new Uint8Array(photo.bytes)).digest('hex'),
    );
  });

  test('that is none, or that can not be read, is refused in a sentence', async () => {
    await expect(readPhotoFile(note)).rejects.toMatchObject({ name: 'PhotoError' });
    const moved = { name: 'moved.jpg', arrayBuffer: () => Promise.reject(new Error('gone')) };
    await expect(readPhotoFile(moved as never)).rejects.toThrow(
      'could not be read. Choose it again',
    );
  });
});

describe('a new painting', () => {
  const sheet: Sheet = { format: 'own', widthMm: 300, heightMm: 200 };
  const made = async (file: File, last: Sheet | null = null, naming = {}) =>
    (await createPainting(file, last, naming, photoSize)).painting;

  test('is named after the file; a photo straight from a camera by its day', async () => {
    expect((await made(across)).title).toBe('seed heads');
    expect((await made(photoOf(40, 30, 'a.b.jpg'))).title).toBe('a.b');
    expect((await made(photoOf(40, 30, ''))).title).toMatch(/^Photo of /);
    expect((await made(across, null, { title: 'Seed heads, last light' })).title).toBe(
      'Seed heads, last light',
    );
  });

  test('lies on the sheet used last, turned as the photo lies; else on a quarter sheet', async () => {
    expect((await made(across, sheet)).reference.sheet).toMatchObject({
      widthMm: 300,
      heightMm: 200,
    });
    const upright = await made(photoOf(300, 400, 'a.png'), sheet);
    expect(upright.reference.sheet).toMatchObject({ widthMm: 200, heightMm: 300 });
    const square = await made(photoOf(300, 300, 'a.png'), {
      ...sheet,
      widthMm: 200,
      heightMm: 300,
    });
    expect(square.reference.sheet).toMatchObject({ widthMm: 300, heightMm: 200 });
    expect((await made(across)).reference.sheet.format).toBe('quarter');
    // The cut is the largest of that shape: all of the width of 4 to 3, 8/9 of the height of 3 to 2.
    const { crop } = (await made(across, sheet)).reference;
    expect([crop.size[0], crop.size[1]]).toEqual([1, expect.closeTo(8 / 9, 9)]);
  });

  test('has the size of its decoded picture, whatever the container says', async () => {
    const turned = async () => ({ width: 300, height: 400 });
    const { painting } = await createPainting(across, sheet, {}, turned);
    expect(painting.reference.sheet).toMatchObject({ widthMm: 200, heightMm: 300 });
    expect(painting.reference.crop.size).toEqual([expect.closeTo(8 / 9, 9), 1]);
    const none = () => Promise.reject(faultOf('PhotoError', 'It is damaged.'));
    await expect(createPainting(across, sheet, {}, none)).rejects.toThrow('It is damaged.');
    // A worker that stopped is no fault of the photo: it is kept by what its header says.
    const stopped = () => Promise.reject(faultOf('AnalysisError', 'It stopped.'));
    const kept = await createPainting(across, sheet, {}, stopped);
    expect(kept.painting.reference.sheet).toMatchObject({ widthMm: 300, heightMm: 200 });
  });

  test('begins without decisions, plans or sessions', async () => {
    const painting = await made(across);
    expect(painting).toMatchObject({ schema: 1, decisions: [], planIds: [], sessionIds: [] });
    expect('purpose' in painting).toBe(false);
    expect(painting.updatedAt).toBe(painting.createdAt);
    expect((await made(across, null, { purpose: 'study' })).purpose).toBe('study');
  });
});

async function intake() {
  const store = await madeStore();
  const opened: Painting[] = [];
  const onCandidates = vi.fn();
  const way = createIntake({
    store,
    photoSize,
    lastSheet: () => null,
    onPainting: (painting) => opened.push(painting),
    onCandidates,
  });
  const kept = async () =>
    (await store.paintings()).map(({ painting }) => painting.purpose ?? 'paint');
  return { way, store, opened, onCandidates, kept };
}

describe('the way in', () => {
  test('keeps the photo before the painting is opened', async () => {
    const { way, store, opened, kept } = await intake();
    const taking = way.take(across);
    expect(way.busy.value).toBe(true);
    await taking;
    expect([way.busy.value, way.problem.value]).toEqual([false, null]);
    expect(await kept()).toEqual(['paint']);
    expect(opened).toHaveLength(1);
    expect((await store.photo(opened[0]?.reference.photoId ?? ''))?.name).toBe('seed heads.jpg');
  });

  test('only to be looked at', async () => {
    const { way, kept } = await intake();
    await way.study(across);
    expect(await kept()).toEqual(['study']);
  });

  test('refuses in a sentence and keeps nothing; the next photo clears it', async () => {
    const { way, opened, kept } = await intake();
    await way.take(note);
    expect([way.busy.value, opened.length, await kept()]).toEqual([false, 0, []]);
    expect(way.problem.value).toBeTruthy();
    await way.take(across);
    expect(way.problem.value).toBeNull();
    way.refuse('Not this one.');
    expect(way.problem.value).toBe('Not this one.');
  });

  test('of two photos one after the other the later is opened, the earlier not even kept', async () => {
    const { way, opened, kept } = await intake();
    const slow = photoOf(40, 30, 'slow.png');
    let ready = (): void => {};
    const bytes = slow.arrayBuffer();
    slow.arrayBuffer = () =>
      new Promise((done) => {
        ready = () => done(bytes);
      });
    const first = way.take(slow);
    const second = way.take(across);
    await second;
    expect(way.busy.value).toBe(false);
    ready();
    await first;
    expect(opened.map(({ title }) => title)).toEqual(['seed heads']);
    expect(await kept()).toEqual(['paint']);
    // Nor does the earlier one's fault count any more.
    const late = { name: 'late.png', arrayBuffer: async () => Promise.reject(new Error('gone')) };
    const third = way.take(late as never);
    await Promise.all([third, way.take(across)]);
    expect([way.problem.value, way.busy.value]).toEqual([null, false]);
  });

  test('several are taken, or none', async () => {
    const { way, onCandidates, kept } = await intake();
    await way.takeSeveral([across, note]);
    expect(await kept()).toEqual([]);
    expect(onCandidates).not.toHaveBeenCalled();
    await way.takeSeveral([across, photoOf(40, 30, 'other.png')]);
    expect(await kept()).toEqual(['candidate', 'candidate']);
    expect(onCandidates).toHaveBeenCalledTimes(1);
  });
});

describe('dropped on the page or pasted', () => {
  function page(welcome: boolean) {
    const target = new EventTarget();
    const files: File[] = [];
    takeDropsAndPastes({
      window: target as Window,
      welcome: () => welcome,
      onFile: (file) => files.push(file),
    });
    const send = (type: string, field: string, given: object | null) => {
      const event = Object.assign(new Event(type, { cancelable: true }), { [field]: given });
      target.dispatchEvent(event);
      return event.defaultPrevented;
    };
    return { files, send };
  }
  const withFile = () => ({ types: ['Files'], files: [across], dropEffect: '' });

  test('a photo is taken, and never opened by the browser instead', () => {
    const { files, send } = page(true);
    const over = withFile();
    expect(send('dragover', 'dataTransfer', over)).toBe(true);
    expect(over.dropEffect).toBe('copy');
    expect(send('drop', 'dataTransfer', withFile())).toBe(true);
    expect(send('paste', 'clipboardData', withFile())).toBe(true);
    expect(files).toEqual([across, across]);
  });

  test('where it is not welcome it is not taken', () => {
    const { files, send } = page(false);
    const over = withFile();
    send('dragover', 'dataTransfer', over);
    expect(over.dropEffect).toBe('none');
    expect(send('drop', 'dataTransfer', withFile())).toBe(true);
    expect(files).toEqual([]);
  });

  test('text is left to the text fields', () => {
    const { files, send } = page(true);
    const text = { types: ['text/plain'], files: [], dropEffect: '' };
    for (const [type, field] of [
      ['dragover', 'dataTransfer'],
      ['drop', 'dataTransfer'],
      ['paste', 'clipboardData'],
    ] as const) {
      expect(send(type, field, text)).toBe(false);
      expect(send(type, field, null)).toBe(false);
    }
    expect(send('drop', 'dataTransfer', { ...withFile(), files: [] })).toBe(true);
    expect([files, text.dropEffect]).toEqual([[], '']);
  });
});

test('of several photos all are kept, or none', async () => {
  const { way, store, onCandidates, kept } = await intake();
  const put = IDBObjectStore.prototype.put;
  let photos = 0;
  IDBObjectStore.prototype.put = function (...row) {
    if (this.name === 'photos' && ++photos === 3) throw new DOMException('', 'QuotaExceededError');
    return put.apply(this, row);
  };
  try {
    await way.takeSeveral([across, across, across, across]);
  } finally {
    IDBObjectStore.prototype.put = put;
  }
  expect(way.problem.value).toMatch(/too little room/);
  expect([onCandidates.mock.calls.length, await kept(), await store.cards()]).toEqual([0, [], []]);
  await way.takeSeveral([across, across]);
  expect(await kept()).toEqual(['candidate', 'candidate']);
});
