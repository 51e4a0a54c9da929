import { expect, test } from 'vitest';
import { paintedCanvas, pngFile } from '../../../app/drawing/png-file.ts';

test('a layer becomes a picture of its own size and colour', async () => {
  const canvas = paintedCanvas(
    document,
    (context) => {
      context.fillStyle = '#336699';
      context.fillRect(0, 0, context.canvas.width, context.canvas.height);
    },
    { width: 12, height: 7 },
  );
  const [file] = await pngFile(canvas, 'meadow 4 sheet');
  expect([file?.name, file?.type]).toEqual(['meadow 4 sheet.png', 'image/png']);
  const picture = await createImageBitmap(file as File);
  expect([picture.width, picture.height]).toEqual([12, 7]);
  const seen = new OffscreenCanvas(12, 7).getContext('2d');
  seen?.drawImage(picture, 0, 0);
  expect([...(seen?.getImageData(6, 3, 1, 1).data ?? [])]).toEqual([0x33, 0x66, 0x99, 255]);
});

test('without a canvas there is nothing to hand on', async () => {
  expect(await pngFile(null, 'meadow')).toEqual([]);
});
