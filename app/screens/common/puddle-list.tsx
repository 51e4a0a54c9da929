import { cssColour } from '../../drawing/css-colour.ts';
import { consistencySign } from '../../model/consistency.ts';
import { valueOfLightness } from '../../model/munsell-value.ts';
import { partsInNumbers, partsInWords } from '../../model/parts-in-words.ts';
import type { Mix, Strength, WashPlan } from '../../model/wash-plan.ts';
import styles from './puddle-list.module.css';

interface PuddleListProps {
  plan: WashPlan;
  mixes: readonly Mix[];
  /** Family id -> what it is called. */
  familyName: (family: number) => string;
}

/** The puddles of a step: paints by words, strength, and the colour each dries to. */
export function PuddleList({ plan, mixes, familyName }: PuddleListProps) {
  const nameOf = (paint: string): string =>
    plan.palette.find(({ id }) => id === paint)?.name ?? paint;
  const puddles = new Map<string, Mix[]>();
  for (const mix of mixes)
    if (mix.puddle !== null) puddles.set(mix.puddle, [...(puddles.get(mix.puddle) ?? []), mix]);
  return (
    <ul class={styles.puddles} data-testid="puddles">
      {[...puddles].map(([puddle, uses]) => (
        <li key={puddle} class={styles.puddle}>
          <details>
            <summary class={styles.words}>{partsInWords(uses[0]?.parts ?? [], nameOf)}</summary>
            <p class={styles.parts}>
              {(uses[0]?.parts.length ?? 0) > 1
                ? `Parts ${partsInNumbers(uses[0]?.parts ?? [])}, in the order named.`
                : 'One paint, nothing mixed in.'}
            </p>
          </details>
          <ul class={styles.uses}>
            {uses.flatMap((mix) => [
              ...(mix.weaker
                ? [
                    <Use
                      key={`${mix.id}-weaker`}
                      mix={mix}
                      strength={mix.weaker}
                      of={`${familyName(mix.family)}, lighter parts`}
                    />,
                  ]
                : []),
              <Use key={mix.id} mix={mix} of={familyName(mix.family)} />,
            ])}
          </ul>
        </li>
      ))}
    </ul>
  );
}

function Use({ mix, strength, of }: { mix: Mix; strength?: Strength; of: string }) {
  const { consistency, expected } = strength ?? mix;
  return (
    <li class={styles.use}>
      <span class={styles.swatch} aria-hidden="true">
        <span style={{ background: cssColour(expected) }} />
        {!strength && <span style={{ background: cssColour(mix.expectedWet) }} />}
      </span>
      <span>
        <strong title={consistencySign[consistency]}>{consistency}</strong> for the {of}
        <br />
        <span class={styles.quiet}>dries to value {valueOfLightness(expected[0]).toFixed(1)}</span>
      </span>
    </li>
  );
}
