import { cssColour, type Lab } from '../../core/colour/lab.ts';
import { thinningFor } from '../../core/paint/thinning.ts';
import { familyNameIn } from '../../core/plan/family-name-in.ts';
import { paintNameIn } from '../../core/plan/paint-name-in.ts';
import type { Mix, Strength, WashPlan } from '../../core/plan/plan.ts';
import { type PuddleAmount, puddleAmount } from '../../core/plan/puddle-amount.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { thinningInWords } from '../../core/words/paint/mix-words.ts';
import { aboutAmounts, amountInWords } from '../../core/words/plan/amounts.ts';
import { valueInWords } from '../../core/words/values.ts';
import styles from './plan-sheet.module.css';

/** One use of a puddle: where, how thick, and the colour it dries to. */
interface Use {
  readonly words: string;
  readonly dries: Lab;
}

function usesOf(mix: Mix, familyName: string, amount: PuddleAmount | null): Use[] {
  const said = ({ consistency, expected, load }: Omit<Strength, 'bands' | 'target'>, more = '') => {
    const thinning = amount && thinningFor(amount.concentration, load);
    const how = thinning ? `, ${thinningInWords(thinning)}` : '';
    return {
      words: `${familyName}${more}: ${consistency}${how}, ${valueInWords(expected[0])}`,
      dries: expected,
    };
  };
  const { weaker } = mix;
  return [...(weaker ? [said(weaker, ', lighter parts')] : []), said(mix)];
}

interface WashUsesProps {
  plan: WashPlan;
  wash: number;
  /** The rows of one puddle in this wash. */
  rows: readonly Mix[];
  reading: Reading;
}

/** How much of a puddle to mix for one wash, and what it is used for. */
function WashUses({ plan, wash, rows, reading }: WashUsesProps) {
  const amount = puddleAmount(plan, rows, reading.sheet);
  const familyName = familyNameIn(plan, reading);
  return (
    <>
      <p>
        Wash {wash}. {amount && amountInWords(amount, paintNameIn(plan))}
      </p>
      {rows
        .flatMap((mix) => usesOf(mix, familyName(mix.family), amount))
        .map(({ words, dries }) => (
          <p key={words} class={styles.use}>
            <svg class={styles.square} viewBox="0 0 1 1" aria-hidden="true">
              <rect width="1" height="1" fill={cssColour(dries)} />
            </svg>
            {words}
          </p>
        ))}
    </>
  );
}

/** Every puddle: its paints in parts, and each of its uses with consistency and value. */
export function PlanMixes({ plan, reading }: { plan: WashPlan; reading: Reading }) {
  const paintName = paintNameIn(plan);
  const puddles = new Map<string, Mix[]>();
  for (const mix of plan.mixes)
    if (mix.puddle !== null) puddles.set(mix.puddle, [...(puddles.get(mix.puddle) ?? []), mix]);
  return (
    <ul class={styles.mixes}>
      {[...puddles].map(([name, mixes]) => (
        <li key={name} class={styles.mix}>
          <p>
            <strong>{name}</strong>{' '}
            {(mixes[0]?.parts ?? [])
              .map(({ paint, parts }) => `${parts} ${paintName(paint)}`)
              .join(' + ')}
          </p>
          {[...new Set(mixes.map(({ wash }) => wash))].map((wash) => (
            <WashUses
              key={wash}
              plan={plan}
              wash={wash}
              rows={mixes.filter((mix) => mix.wash === wash)}
              reading={reading}
            />
          ))}
        </li>
      ))}
      <li class={styles.mix}>{aboutAmounts}</li>
    </ul>
  );
}
