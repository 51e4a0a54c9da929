import type { PlanWishes } from '../../app/core/decisions/plan-wishes.ts';
import { noCheckpoint } from '../../app/core/palette/checkpoint.ts';
import { createPlanMemory } from '../../app/core/plan/plan-memory.ts';
import { choosePalette } from '../../app/core/plan/solve/choose-palette.ts';
import { plannedSlots } from '../../app/core/plan/targets/planned-slots.ts';
import type { Reading } from '../../app/core/reading/reading.ts';
import { copiedPhotographs } from './copied-photographs.ts';

/** How many copies of six photographs keep the palette of the photograph, searched afresh, and with it at hand. */
export async function measurePaletteStability(): Promise<void> {
  console.log('Palettes of copies of six photographs');
  const memory = createPlanMemory();
  const paletteOf = async (reading: Reading, wishes: PlanWishes): Promise<string[]> => {
    const planned = await plannedSlots(reading, wishes, noCheckpoint, memory.darkest);
    const { paints } = await choosePalette(reading, planned, noCheckpoint, memory);
    return paints.map(({ id }) => id);
  };
  const kept = { afresh: 0, present: 0, of: 0 };
  for await (const { photograph, copied } of copiedPhotographs()) {
    const own = await paletteOf(photograph.reading, {});
    console.log(`  ${photograph.name}: ${own.join(', ')}`);
    for await (const [what, { reading }] of copied) {
      const afresh = await paletteOf(reading, {});
      const present = await paletteOf(reading, { present: own });
      kept.of += 1;
      if (present.join() === own.join()) kept.present += 1;
      if (afresh.join() === own.join()) kept.afresh += 1;
      else console.log(`    ${what}: ${afresh.join(', ')}`);
    }
  }
  console.log(`  kept, searched afresh: ${kept.afresh} of ${kept.of}`);
  console.log(`  kept, with the palette at hand: ${kept.present} of ${kept.of}`);
}
