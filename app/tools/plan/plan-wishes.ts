import type { PlanWishes } from '../../model/wash-plan.ts';
import { CommandError } from './command-error.ts';
import type { PlanOptions } from './plan-options.ts';

const mostPaints = 7;

/**
 * Paints named are used as they are; where they are more than the palette may hold they are the
 * box to choose from. `known` are the ids of the built-in box.
 */
export function planWishes(options: PlanOptions, known: readonly string[]): PlanWishes {
  const size = options.palette === undefined ? {} : { paletteSize: options.palette };
  if (!options.paints) return size;
  const paints = [...new Set(options.paints)];
  const unknown = paints.find((id) => !known.includes(id));
  if (unknown !== undefined) {
    throw new CommandError(
      `--paints: there is no paint "${unknown}"; known are ${known.join(', ')}`,
    );
  }
  const asTheyAre = paints.length <= (options.palette ?? mostPaints);
  return asTheyAre ? { chosen: paints } : { box: paints, ...size };
}
