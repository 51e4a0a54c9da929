import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import type { PlanWishes } from '../../app/core/decisions/plan-wishes.ts';
import { noCheckpoint } from '../../app/core/palette/checkpoint.ts';
import { createPlanMemory } from '../../app/core/plan/plan-memory.ts';
import { choosePalette } from '../../app/core/plan/solve/choose-palette.ts';
import { plannedSlots } from '../../app/core/plan/targets/planned-slots.ts';
import type { Reading } from '../../app/core/reading/reading.ts';
import { readPhotograph, sixPhotographs } from './six-plans.ts';

type Copy = (photo: Sharp, width: number, height: number) => Sharp;

const resized =
  (side: number): Copy =>
  (photo) =>
    photo.resize({ width: side, height: side, fit: 'inside' }).jpeg({ quality: 92 });

/** What becomes of a photo on its way from one device to another. */
const copies: Readonly<Record<string, Copy>> = {
  'JPEG quality 60': (photo) => photo.jpeg({ quality: 60 }),
  'brighter by 6 %': (photo) => photo.linear(1.06, 0).jpeg({ quality: 92 }),
  'cropped by 2 %': (photo, width, height) => {
    const [left, top] = [Math.round(0.02 * width), Math.round(0.02 * height)];
    const inside = { left, top, width: width - 2 * left, height: height - 2 * top };
    return photo.extract(inside).jpeg({ quality: 92 });
  },
  '800 px': resized(800),
  '1600 px': resized(1600),
  '3200 px': resized(3200),
};

/** How many copies of six photographs keep the palette of the photograph, searched afresh, and with it at hand. */
export async function measurePaletteStability(): Promise<void> {
  console.log('Palettes of copies of six photographs');
  const memory = createPlanMemory();
  const paletteOf = async (reading: Reading, wishes: PlanWishes): Promise<string[]> => {
    const planned = await plannedSlots(reading, wishes, noCheckpoint, memory.darkest);
    const { paints } = await choosePalette(reading, planned, noCheckpoint, memory);
    return paints.map(({ id }) => id);
  };
  const folder = await mkdtemp(join(tmpdir(), 'copies-'));
  const file = join(folder, 'copy.jpg');
  const kept = { afresh: 0, present: 0, of: 0 };
  try {
    for (const path of sixPhotographs) {
      const { name, reading } = await readPhotograph(path);
      const own = await paletteOf(reading, {});
      console.log(`  ${name}: ${own.join(', ')}`);
      const { width, height } = await sharp(path).metadata();
      for (const [what, copy] of Object.entries(copies)) {
        await copy(sharp(path), width, height).toFile(file);
        const { reading: copied } = await readPhotograph(file);
        const afresh = await paletteOf(copied, {});
        const present = await paletteOf(copied, { present: own });
        kept.of += 1;
        if (present.join() === own.join()) kept.present += 1;
        if (afresh.join() === own.join()) kept.afresh += 1;
        else console.log(`    ${what}: ${afresh.join(', ')}`);
      }
    }
  } finally {
    await rm(folder, { recursive: true });
  }
  console.log(`  kept, searched afresh: ${kept.afresh} of ${kept.of}`);
  console.log(`  kept, with the palette at hand: ${kept.present} of ${kept.of}`);
}
