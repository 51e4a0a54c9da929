import { useSignal } from '@preact/signals';
import { partsInWords } from '../../model/parts-in-words.ts';
import type { Mix, WashPlan } from '../../model/wash-plan.ts';
import type { PaintCalls } from '../../state/paint-calls.ts';
import { later } from './later.tsx';
import styles from './puddle-list.module.css';
import { PuddleUse } from './puddle-use.tsx';

const PuddleDetails = later(() => import('./puddle-details.tsx').then((m) => m.PuddleDetails));

export interface PuddleSource {
  plan: WashPlan;
  /** Family id -> what it is called. */
  familyName: (family: number) => string;
  /** Left out: the mixes next to a puddle are not offered. */
  calls?: PaintCalls;
}

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
    </ul>
  );
}

function Puddle({ uses, ...source }: PuddleSource & { uses: readonly Mix[] }) {
  const opened = useSignal(false);
  const { plan, familyName } = source;
  const nameOf = (paint: string): string =>
    plan.palette.find(({ id }) => id === paint)?.name ?? paint;
  const notes = new Set(uses.flatMap((mix) => mix.notes ?? []));
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
          ...(mix.weaker
            ? [
                <PuddleUse
                  key={`${mix.id}-weaker`}
                  mix={mix}
                  strength={mix.weaker}
                  of={`${familyName(mix.family)}, lighter parts`}
                />,
              ]
            : []),
          <PuddleUse key={mix.id} mix={mix} of={familyName(mix.family)} />,
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
