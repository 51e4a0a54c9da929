import { emptyRaster } from './kernels/pixels/linear-raster.ts';
import { readPicture } from './kernels/read-picture.ts';

const width = 320;
const height = 240;

/** Waves of light and shade in all hues: every part of a reading has something to do. */
function practiceRaster() {
  const raster = emptyRaster(width, height);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const wave = (1 + Math.sin(x / 11) * Math.cos(y / 17)) / 2;
      raster.red[i] = wave;
      raster.green[i] = (wave * x) / width;
      raster.blue[i] = (wave * y) / height;
    }
  }
  return raster;
}

/**
 * Reads a small made picture for nothing: the engine compiles what a reading runs through, so that her
 * first picture takes no longer than her second.
 */
export async function warmReading(pause: () => Promise<void>): Promise<void> {
  await readPicture(
    {
      raster: practiceRaster(),
      clipped: { light: 0, dark: 0 },
      sheet: { widthMm: 80, heightMm: 60 },
      wishes: {},
      darkest: 25,
      paper: 95,
    },
    pause,
  );
}
