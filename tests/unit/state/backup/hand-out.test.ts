import { describe, expect, test, vi } from 'vitest';
import { createHandOut, fileWords } from '../../../../app/state/backup/hand-out.ts';

const zip = new File(['a copy'], 'Firstwash 2026-12-01.zip', { type: 'application/zip' });
/** A browser with these doors for a file to leave by. */
const handOutBy = (doors: { navigator?: object; showSaveFilePicker?: unknown }) =>
  createHandOut({ navigator: {}, document: {}, ...doors } as unknown as Window & typeof globalThis);

const sheetClosed = () => Promise.reject(new DOMException('closed', 'AbortError'));
const refused = () => Promise.reject(new DOMException('no', 'NotAllowedError'));

describe('shared', () => {
  test('under the name of its file; a sheet she closed is no fault, any other end is one', async () => {
    const share = vi.fn(async () => {});
    expect(await handOutBy({ navigator: { share } }).share([zip])).toBe(true);
    expect(share).toHaveBeenCalledWith({ files: [zip], title: zip.name });
    expect(await handOutBy({ navigator: { share: sheetClosed } }).share([zip])).toBe(false);
    await expect(handOutBy({ navigator: { share: refused } }).share([zip])).rejects.toMatchObject({
      name: 'BackupError',
      kind: 'unwritten',
    });
  });

  test('only where the browser says it takes such files', () => {
    expect(handOutBy({}).canShare([zip])).toBe(false);
    for (const says of [true, false]) {
      expect(handOutBy({ navigator: { canShare: () => says } }).canShare([zip])).toBe(says);
    }
  });
});

describe('saved to a place she picks', () => {
  test('whole, as a file of its kind', async () => {
    const written: string[] = [];
    const showSaveFilePicker = vi.fn(async () => ({
      createWritable: async () =>
        new WritableStream<Uint8Array>({
          write: (chunk) => void written.push(new TextDecoder().decode(chunk)),
        }),
    }));
    expect(await handOutBy({ showSaveFilePicker }).save(zip)).toBe(true);
    expect(written.join('')).toBe('a copy');
    expect(showSaveFilePicker).toHaveBeenCalledWith({
      suggestedName: zip.name,
      types: [{ accept: { 'application/zip': ['.zip'] } }],
    });
  });

  test('a picker she closed is no fault; a place that can not be written is one', async () => {
    expect(await handOutBy({ showSaveFilePicker: sheetClosed }).save(zip)).toBe(false);
    await expect(handOutBy({ showSaveFilePicker: refused }).save(zip)).rejects.toMatchObject({
      kind: 'unwritten',
    });
  });
});

test("names take letters, figures and , ' - of any script, at most 60 signs", () => {
  expect(fileWords(' seed/heads: "last" light, Ute\'s 2-3 ')).toBe(
    "seed heads last light, Ute's 2-3",
  );
  expect(fileWords('Wiese … Süden 夕焼け')).toBe('Wiese Süden 夕焼け');
  expect(fileWords('x'.repeat(61))).toHaveLength(60);
});
