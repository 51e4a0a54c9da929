import { expect, test } from 'vitest';
import { paintedCanvas, pngFile } from '../../../app/drawing/png-file.ts';
import { notedCanvas } from '../../support/drawing/noted-context.ts';

// Figures are those of what is drawn here (own).
test('a packed canvas is a file under its name; none where it cannot be packed, or there is none', async () => {
  const packs = (blob: Blob | null): HTMLCanvasElement =>
    ({ toBlob: (done: BlobCallback) => done(blob) }) as unknown as HTMLCanvasElement;
  const [file, ...more] = await pngFile(packs(new Blob(['seed'])), 'meadow');
  expect([file?.name, file?.type, await file?.text(), more]).toEqual([
    ...['meadow.png', 'image/png', 'seed', []],
  ]);
  expect(await pngFile(packs(null), 'meadow')).toEqual([]);
  expect(await pngFile(null, 'meadow')).toEqual([]);
});

test('a layer is painted on a canvas of its size, where one can be had', () => {
  const { canvas, made } = notedCanvas();
  const size = { width: 12, height: 7 };
  const painted = paintedCanvas(canvas.ownerDocument, (on) => on.fillRect(1, 2, 3, 4), size);
  expect(painted).toMatchObject(size);
  expect(made[1]?.drawn[0]?.with).toEqual([1, 2, 3, 4]);
  const none = { createElement: () => ({ getContext: () => null }) } as unknown as Document;
  const never = (): void => expect.fail('painted');
  expect(paintedCanvas(none, never, size)).toBeNull();
});
