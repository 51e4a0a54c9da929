import { type Lab, labOfRgb, rgbOfLab } from '../colour/lab.ts';
import type { Mix, Step, WashPlan } from './plan.ts';

type Row = Pick<Mix, 'weaker' | 'expected' | 'expectedWet'>;

/** Lab difference between a mix wet and dry, at the strength used for a slot of that band. */
function wetShift({ weaker, expected, expectedWet }: Row, band: number): Lab {
  const thin = weaker?.bands.includes(band) && weaker.expectedWet ? weaker : undefined;
  const dry = thin?.expected ?? expected;
  const wet = thin?.expectedWet ?? expectedWet;
  return [wet[0] - dry[0], wet[1] - dry[1], wet[2] - dry[2]];
}

/**
 * The colour of every slot right after a wash, while it is wet: darker and stronger than it dries. What the wash
 * does not go over is dry, and so is all the sheet after any other step.
 */
export function coloursWhileWet(
  { slots, mixes }: Pick<WashPlan, 'slots' | 'mixes'>,
  step: Step,
): Lab[] {
  const rows = step.kind === 'wash' ? mixes.filter(({ id }) => step.mixes.includes(id)) : [];
  return step.after.map((dry, i): Lab => {
    const slot = slots[i];
    if (!slot || !step.slots.includes(i)) return dry;
    const row = rows.find((mix) => mix.passage === slot.passage && mix.family === slot.family);
    if (!row) return dry;
    const [l, a, b] = wetShift(row, slot.band);
    return [Math.max(0, dry[0] + l), dry[1] + a, dry[2] + b];
  });
}

type Look = Pick<Step, 'after' | 'look'>;

/** The look of a sheet with the colours of slots changed; `rows` says which slot every row of the squares is of. */
export function mapLook(
  { after, look }: Look,
  rows: readonly number[] | undefined,
  change: (lab: Lab, slot: number) => Lab,
): Look {
  const changed = after.map(change);
  if (!look || !rows) return { after: changed };
  const out = Uint8ClampedArray.from(look);
  for (const [row, slot] of rows.entries()) {
    const lab = labOfRgb([look[3 * row], look[3 * row + 1], look[3 * row + 2]]);
    const next = change(lab, slot);
    if (next !== lab) out.set(rgbOfLab(next), 3 * row);
  }
  return { after: changed, look: out };
}

/** The look of the sheet right after a wash. */
export function lookWhileWet(
  plan: Pick<WashPlan, 'slots' | 'mixes'>,
  step: Step,
  rows: readonly number[] | undefined,
): Look {
  const wet = coloursWhileWet(plan, step);
  const { look } = mapLook(step, rows, (lab, slot) => {
    const [now, dry] = [wet[slot], step.after[slot]];
    if (!now || !dry || now === dry) return lab;
    return [
      Math.max(0, lab[0] + now[0] - dry[0]),
      lab[1] + now[1] - dry[1],
      lab[2] + now[2] - dry[2],
    ];
  });
  return { after: wet, ...(look && { look }) };
}
