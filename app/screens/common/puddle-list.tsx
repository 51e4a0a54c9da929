import { useSignal } from '@preact/signals';
import { partsInWords } from '../../model/parts-in-words.ts';
import { puddleAmount } from '../../model/puddle-amount.ts';
import { amountInWords, amountsAreRough } from '../../model/puddle-amount-words.ts';
import type { Reading } from '../../model/reading.ts';
import type { Mix, Step } from '../../model/wash-plan.ts';
import { later } from './later.tsx';
import styles from './puddle-list.module.css';
import type { PuddleSource } from './puddle-source.ts';
import { PuddleUse } from './puddle-use.tsx';

const PuddleDetails = later(() => import('./puddle-details.tsx').then((m) => m.PuddleDetails));

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
    <ul class={styles.puddles} data-testid="puddles">
      {[...puddles].map(([puddle, uses]) => (
        <Puddle key={puddle} uses={uses} {...source} />
      ))}
      {source.sheet && <li class={styles.quiet}>{amountsAreRough}</li>}
    </ul>
  );
}

function Puddle({ uses, ...source }: PuddleSource & { uses: readonly Mix[] }) {
  const opened = useSignal(false);
  const { plan, familyName, sheet, strongest } = source;
  const amount = sheet && puddleAmount(plan, uses, sheet);
  const nameOf = (paint: string): string =>
    plan.palette.find(({ id }) => id === paint)?.name ?? paint;
  const inSeveral = new Set(uses.map(({ passage }) => passage)).size > 1;
  const placeOf = ({ family, passage }: Mix): string =>
    inSeveral ? `${familyName(family)} of the ${passage}` : familyName(family);
  const notes = new Set(strongest ? [] : uses.flatMap((mix) => mix.notes ?? []));
  return (
    <li class={styles.puddle}>
      <details
        onToggle={({ currentTarget }) => {
          if (currentTarget.open) opened.value = true;
        }}
      >
        <summary class={styles.words}>{partsInWords(uses[0]?.parts ?? [], nameOf)}</summary>
        {opened.value && <PuddleDetails uses={uses} nameOf={nameOf} {...source} />}
      </details>
      <ul class={styles.uses}>
        {uses.flatMap((mix) => [
          ...(mix.weaker && !strongest
            ? [
                <PuddleUse
                  key={`${mix.id}-weaker`}
                  mix={mix}
                  strength={mix.weaker}
                  of={`${placeOf(mix)}, lighter parts`}
                />,
              ]
            : []),
          <PuddleUse key={mix.id} mix={mix} of={placeOf(mix)} />,
        ])}
      </ul>
      {amount && <p class={styles.quiet}>{amountInWords(amount, nameOf)}</p>}
      {[...notes].map((note) => (
        <p key={note} class={styles.note}>
          {note}
        </p>
      ))}
    </li>
  );
}
