import { cssColour, type Lab } from '../../core/colour/lab.ts';
import { valueOfLightness } from '../../core/colour/lightness.ts';
import { familyNameIn } from '../../core/plan/family-name-in.ts';
import type { Mix, WashPlan } from '../../core/plan/plan.ts';
import { amountInWords, amountsAreRough, puddleAmount } from '../../core/plan/puddle-amount.ts';
import type { Reading } from '../../core/reading/reading.ts';
import styles from './plan-sheet.module.css';

/** One use of a puddle: where, how thick, and the colour it dries to. */
interface Use {
  readonly words: string;
  readonly dries: Lab;
}

function usesOf(mix: Mix, familyName: string): Use[] {
  const place = `wash ${mix.wash}, ${familyName}`;
  const said = (consistency: string, lab: Lab, more = ''): Use => ({
    words: `${place}${more}: ${consistency}, value ${valueOfLightness(lab[0]).toFixed(1)}`,
    dries: lab,
  });
  const { weaker } = mix;
  return [
    ...(weaker ? [said(weaker.consistency, weaker.expected, ' lighter parts')] : []),
    said(mix.consistency, mix.expected),
  ];
}

interface AmountsProps {
  plan: WashPlan;
  mixes: readonly Mix[];
  reading: Reading;
  paintName: (paint: string) => string;
}

/** How much of a puddle to mix, wash by wash. */
function Amounts({ plan, mixes, reading, paintName }: AmountsProps) {
  const washes = [...new Set(mixes.map(({ wash }) => wash))];
  return (
    <>
      {washes.map((wash) => {
        const rows = mixes.filter((mix) => mix.wash === wash);
        const amount = puddleAmount(plan, rows, reading.sheet);
        return (
          amount && (
            <p key={wash}>
              Wash {wash}: {amountInWords(amount, paintName)}
            </p>
          )
        );
      })}
    </>
  );
}

/** Every puddle: its paints in parts, and each of its uses with consistency and value. */
export function PlanMixes({ plan, reading }: { plan: WashPlan; reading: Reading }) {
  const paintName = (paint: string): string =>
    plan.palette.find(({ id }) => id === paint)?.name ?? paint;
  const familyName = familyNameIn(plan, reading);
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
          <Amounts plan={plan} mixes={mixes} reading={reading} paintName={paintName} />
          {mixes
            .flatMap((mix) => usesOf(mix, familyName(mix.family)))
            .map(({ words, dries }) => (
              <p key={words} class={styles.use}>
                <svg class={styles.square} viewBox="0 0 1 1" aria-hidden="true">
                  <rect width="1" height="1" fill={cssColour(dries)} />
                </svg>
                {words}
              </p>
            ))}
        </li>
      ))}
      <li class={styles.mix}>{amountsAreRough}</li>
    </ul>
  );
}
