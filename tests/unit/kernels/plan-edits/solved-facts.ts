import { usualPaper } from '../../../../app/model/drying/paper-choice.ts';
import { roomWeather } from '../../../../app/model/drying/weather.ts';
import type { Paint } from '../../../../app/model/paint.ts';
import type { Reading } from '../../../../app/model/reading.ts';
import { reservesOf } from '../../../../app/model/tone-range.ts';
import { paintBox } from '../../../../workers/kernels/optics/paint-box.ts';
import { paintTogether } from '../../../../workers/kernels/plan/paint-together.ts';
import type { PlanFacts } from '../../../../workers/kernels/plan/plan-facts.ts';
import { solvePassages } from '../../../../workers/kernels/plan/solve-passages.ts';

export const paintsNamed = (...ids: readonly string[]): Paint[] =>
  ids.flatMap((id) => paintBox.find((paint) => paint.id === id) ?? []);

/** A reading solved wash over wash with these paints, as the steps are made from it. */
export async function solvedFacts(
  reading: Reading,
  paints: readonly Paint[],
  washes = 3,
): Promise<PlanFacts> {
  const slots = paintTogether(reading, undefined);
  const passages = await solvePassages({ slots, paints }, { washes }, async () => {});
  return {
    reading,
    slots,
    reserves: reservesOf(slots),
    paints,
    passages,
    weather: roomWeather,
    paper: usualPaper,
  };
}
