import { useSignal } from '@preact/signals';
import { Fragment } from 'preact';
import { cssColour } from '../../core/colour/lab.ts';
import { thinningFor } from '../../core/paint/thinning.ts';
import { paintNameIn } from '../../core/plan/paint-name-in.ts';
import type { Mix, Step, Strength } from '../../core/plan/plan.ts';
import { type PuddleAmount, puddleAmount } from '../../core/plan/puddle-amount.ts';
import type { Reading } from '../../core/reading/reading.ts';
import { consistencySign, thinningInWords, wetLook } from '../../core/words/paint/mix-words.ts';
import { aboutAmounts, amountInWords } from '../../core/words/plan/amounts.ts';
import { words as told } from '../../core/words/plan/words.ts';
import { valueInWords } from '../../core/words/values.ts';
import { lazyScreen } from '../layout/lazy-screen.tsx';
import { mixWordsIn } from './mix-words-in.ts';
import type { PuddleSource } from './puddle-details.tsx';
import styles from './puddle-list.module.css';

const PuddleDetails = lazyScreen(() => import('./puddle-details.tsx').then((m) => m.PuddleDetails));

/** The sheet to reckon amounts for, at the steps where puddles are mixed. */
export const amountsFor = (
  { kind }: Pick<Step, 'kind'>,
  { sheet }: Pick<Reading, 'sheet'>,
): Reading['sheet'] | undefined => (kind === 'puddles' || kind === 'wash' ? sheet : undefined);

/** The puddles of a step: paints by words, strength, and the colour each dries to. */
export function PuddleList({ mixes, ...source }: PuddleSource & { mixes: readonly Mix[] }) {
  const puddles = new Map<string, Mix[]>();
  for (const mix of mixes)
    if (mix.puddle !== null) puddles.set(mix.puddle, [...(puddles.get(mix.puddle) ?? []), mix]);
  return (
    <ul class="stack" data-testid="puddles">
      {[...puddles].map(([puddle, uses]) => (
        <Puddle key={puddle} uses={uses} {...source} />
      ))}
      {source.sheet && <li class="quiet">{aboutAmounts}</li>}
    </ul>
  );
}

function Puddle({ uses, ...source }: PuddleSource & { uses: readonly Mix[] }) {
  const opened = useSignal(false);
  const { plan, familyName, sheet, strongest } = source;
  const amount = sheet && puddleAmount(plan, uses, sheet);
  const nameOf = paintNameIn(plan);
  const inSeveral = new Set(uses.map(({ passage }) => passage)).size > 1;
  const placeOf = ({ family, passage }: Mix): string =>
    inSeveral ? `${familyName(family)} of the ${passage}` : familyName(family);
  const notes = new Set(strongest ? [] : uses.flatMap((mix) => (mix.notes ?? []).map(told)));
  return (
    <li class={styles.puddle}>
      <details
        onToggle={({ currentTarget }) => {
          if (currentTarget.open) opened.value = true;
        }}
      >
        <summary class={styles.words}>
          {uses[0]?.puddle}: {mixWordsIn(plan)(uses[0]?.parts ?? [])}
        </summary>
        {opened.value && <PuddleDetails uses={uses} {...source} />}
      </details>
      {amount && <Amount words={amountInWords(amount, nameOf)} />}
      <ul class={styles.uses}>
        {uses.flatMap((mix) => [
          ...(mix.weaker && !strongest
            ? [
                <PuddleUse
                  key={`${mix.id}-weaker`}
                  mix={mix}
                  strength={mix.weaker}
                  amount={amount}
                  place={`${placeOf(mix)}, lighter parts`}
                />,
              ]
            : []),
          <PuddleUse key={mix.id} mix={mix} amount={amount} place={placeOf(mix)} />,
        ])}
      </ul>
      {[...notes].map((note) => (
        <p key={note} class={styles.note}>
          {note}
        </p>
      ))}
    </li>
  );
}

/** An amount, each thing to measure out kept on one line where there is room. */
function Amount({ words }: { words: string }) {
  const things = words.split(', ');
  return (
    <p>
      {things.map((thing, n) => (
        <Fragment key={thing}>
          <span class={styles.thing}>{n < things.length - 1 ? `${thing},` : thing}</span>{' '}
        </Fragment>
      ))}
    </p>
  );
}

interface PuddleUseProps {
  mix: Mix;
  /** A weaker one of the mix; left out: its full one. */
  strength?: Strength;
  /** The puddle it is taken from; none where nothing is said of amounts. */
  amount: PuddleAmount | null | undefined;
  place: string;
}

/** One strength of a puddle: dry colour over wet, the consistency word, how it is thinned, and the value it dries to. */
function PuddleUse({ mix, strength, amount, place }: PuddleUseProps) {
  const { consistency, expected, load } = strength ?? mix;
  const thinning = amount && thinningFor(amount.concentration, load);
  return (
    <li class={styles.use}>
      <span class={styles.swatch} aria-hidden="true">
        <span style={{ background: cssColour(expected) }} />
        {!strength && <span style={{ background: cssColour(mix.expectedWet) }} />}
      </span>
      <span>
        <strong title={consistencySign[consistency]}>{consistency}</strong> for the {place}
        {thinning && `: ${thinningInWords(thinning)}`}
        <br />
        <span class="quiet">
          dries to {valueInWords(expected[0])}
          {!strength && `; ${wetLook(expected, mix.expectedWet)}`}
        </span>
      </span>
    </li>
  );
}
