import { bandWord } from '../../../../app/model/band-words.ts';
import type { Lab } from '../../../../app/model/lab.ts';
import { valueOfLightness } from '../../../../app/model/munsell-value.ts';
import type { Warning } from '../../../../app/model/reading.ts';
import { familyName, type PlanFacts } from '../plan-facts.ts';

/** Off by more than this a shape has not got its value, L* (the measure of the plan). */
export const missedBy = 5;

/** So many are named. */
const named = 3;

interface Missed {
  readonly index: number;
  readonly share: number;
  /** Munsell values; above 0 too light. */
  readonly values: number;
  /** No wash of these paints is that dark. */
  readonly beyond: boolean;
}

/** Painted slots that end more than 5 L* off, the largest first. `reached`: darkest wash of the paints, L*. */
function missedSlots({ slots }: PlanFacts, last: readonly Lab[], reached: number): Missed[] {
  return slots
    .flatMap(({ reserve, share, target }, index): Missed[] => {
      const got = last[index]?.[0];
      if (reserve || share <= 0 || got === undefined) return [];
      if (Math.abs(got - target[0]) <= missedBy) return [];
      const values = valueOfLightness(got) - valueOfLightness(target[0]);
      return [{ index, share, values, beyond: values > 0 && target[0] < reached }];
    })
    .sort((one, two) => two.share - one.share);
}

function nameOf(facts: PlanFacts, index: number): string {
  const slot = facts.slots[index];
  const value = bandWord(slot?.band ?? 1, facts.reading.bands.length);
  return `${value} ${facts.paints.length === 1 ? 'shapes' : familyName(facts, slot?.family ?? 0)}`;
}

/**
 * Shapes whose value no wash reaches, and is not said of the darks as a whole (`darksTold`). Null where every
 * shape gets within 5 L* of its value.
 */
export function shapeWarning(
  facts: PlanFacts,
  last: readonly Lab[],
  reached: number,
  darksTold: boolean,
): Warning | null {
  const missed = missedSlots(facts, last, reached).filter(({ beyond }) => !(beyond && darksTold));
  const [first] = missed;
  if (!first) return null;
  const names = missed
    .slice(0, named)
    .map(
      ({ index, values }) =>
        `the ${nameOf(facts, index)} ${Math.abs(values).toFixed(1)} too ${values > 0 ? 'light' : 'dark'}`,
    );
  const others = missed.length - names.length;
  const more = others > 0 ? ` and ${others} more` : '';
  const why = first.beyond
    ? 'No mix of these paints gets that dark: add a deeper paint, or let it stay lighter.'
    : 'They share a wash or a puddle with others: allow one more wash, or change their mix.';
  return {
    code: 'shape-out-of-reach',
    text: `Some shapes miss their value: ${names.join(', ')}${more} (in steps of ten). ${why}`,
  };
}
