import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { y4m } from '../../support/y4m.ts';

/**
 * Launch arguments for a browser whose camera shows a still picture of 640 x 480 px; `luma` gives its
 * grey, 0..255, for a pixel. What is snapped is up to 1 L* off (the clip is YUV).
 */
export function fakeCamera(folder: string, luma: (x: number, y: number) => number): string[] {
  const clip = join(folder, 'camera.y4m');
  writeFileSync(clip, y4m(640, 480, 3, luma));
  return [
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-video-capture=${clip}`,
  ];
}
