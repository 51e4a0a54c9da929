import { createDryingModel } from '../../../app/core/drying/estimate-drying.ts';
import { usualPaper } from '../../../app/core/drying/paper-choice.ts';
import { roomWeather } from '../../../app/core/drying/weather.ts';
import type { Paint } from '../../../app/core/paint/paint.ts';
import { paintBox } from '../../../app/core/paint/paint-box.ts';
import type { PlanFacts } from '../../../app/core/plan/plan-facts.ts';
import { solvePassages } from '../../../app/core/plan/solve/solve-palette.ts';
import { mergePassages } from '../../../app/core/plan/targets/adjust-targets.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';
import { reservesOf } from '../../../app/core/reading/tone-range.ts';

export const paintsNamed = (...ids: readonly string[]): Paint[] =>
  ids.flatMap((id) => paintBox.find((paint) => paint.id === id) ?? []);

/** A reading solved wash over wash with these paints, as the steps are made from it. */
export async function solvedFacts(
  reading: Reading,
  paints: readonly Paint[],
  washes = 3,
): Promise<PlanFacts> {
  const slots = mergePassages(reading, undefined);
  const passages = await solvePassages({ slots, paints }, { washes }, async () => {});
  return {
    reading,
    slots,
    reserves: reservesOf(slots),
    paints,
    passages,
    weather: roomWeather,
    paper: usualPaper,
    dryingModel: createDryingModel(),
  };
}
