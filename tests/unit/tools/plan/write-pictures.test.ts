import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { writePictures } from '../../../../app/tools/plan/write-pictures.ts';
import { newPlanSample } from '../../../support/storage/kept-samples.ts';

const folder = mkdtempSync(join(tmpdir(), 'write-pictures-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const { plan, kept } = newPlanSample('any');
const rgba = new Uint8ClampedArray(40 * 30 * 4).fill(255);
const pictures = {
  reference: rgba,
  grey: rgba,
  slotMap: new Uint8Array(1200),
  bandMap: new Uint8Array(1200),
};
const write = (dir: string) => writePictures(dir, kept.reading, plan, pictures);

test.each(['reference.png', 'grey.png', 'edges.png'])(
  'a place that takes no file, %s being a folder, is one line',
  async (name) => {
    const dir = join(folder, name);
    mkdirSync(join(dir, name), { recursive: true });
    await expect(write(dir)).rejects.toMatchObject({
      name: 'CommandError',
      message: expect.stringMatching(new RegExp(`^--out: .*${name} can't be written$`)),
    });
  },
);
