import { roomWeather } from '../../model/drying/weather.ts';
import type { Paint } from '../../model/paint.ts';
import type { PlanWishes } from '../../model/plan-wishes.ts';
import { CommandError } from './command-error.ts';
import type { PlanOptions } from './plan-options.ts';

const mostPaints = 7;

/** What concerns time, air, paper and order. */
const circumstances = ({ evening, dryer, washes, paper, passages }: PlanOptions): PlanWishes => ({
  ...(evening !== undefined && { evening }),
  ...(dryer && { weather: { ...roomWeather, hairDryer: true } }),
  ...(washes !== undefined && { washes }),
  ...(paper && { paper }),
  ...(passages && { passages }),
});

/**
 * Paints named are used as they are; where they are more than the palette may hold they are the
 * box to choose from. `known` are the ids of the built-in box; `own` are paints of a file, which count
 * as if they had been named.
 */
export function planWishes(
  options: PlanOptions,
  known: readonly string[],
  own: readonly Paint[] = [],
): PlanWishes {
  const size = options.palette === undefined ? {} : { paletteSize: options.palette };
  const paints = [...new Set([...(options.paints ?? []), ...own.map(({ id }) => id)])];
  const given = circumstances(options);
  if (paints.length === 0) return { ...size, ...given };
  const unknown = options.paints?.find((id) => !known.includes(id));
  if (unknown !== undefined) {
    throw new CommandError(
      `--paints: there is no paint "${unknown}"; known are ${known.join(', ')}`,
    );
  }
  const asTheyAre = paints.length <= (options.palette ?? mostPaints);
  return {
    ...given,
    ...(asTheyAre ? { chosen: paints } : { box: paints, ...size }),
    ...(own.length > 0 && { ownPaints: own }),
  };
}
