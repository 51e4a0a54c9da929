import { reducePicture } from '../../workers/kernels/pixels/raster-reducer.ts';
import { readPicture } from '../../workers/kernels/read-picture.ts';
import type { Bench, BenchSetting } from './bench.ts';
import { lightnessByLibrary } from './lightness-by-library.ts';
import { seededPicture } from './seeded-picture.ts';

export async function bench({ photo }: BenchSetting): Promise<Bench> {
  const picture = seededPicture(photo.width >> 1, photo.height >> 1, 3);
  const ours = () =>
    readPicture(
      {
        ...reducePicture(picture.rgba, picture, picture),
        sheet: { widthMm: 381, heightMm: 279 },
        wishes: { bands: 4 },
        darkest: 25,
        paper: 95,
      },
      async () => undefined,
    );
  const { reading } = await ours();
  const shares = reading.bands.reduce((sum, band) => sum + band.share, 0);
  return {
    name: 'whole reading',
    work: `${picture.width} x ${picture.height} px from bytes to bands, families, shapes and borders; the library only finds the colours of the pixels`,
    ours: { name: 'raster + reading', run: ours },
    peer: { name: 'culori lab65 a pixel', run: () => lightnessByLibrary(picture.rgba) },
    agreement: `${reading.bands.length} bands whose shares sum to ${shares.toFixed(6)}`,
  };
}
