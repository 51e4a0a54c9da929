import { useSignal } from '@preact/signals';
import { mixesBelow } from '../../model/mixes-below.ts';
import { partsInNumbers } from '../../model/parts-in-words.ts';
import type { Mix } from '../../model/wash-plan.ts';
import { ChoiceRow } from './choice-row.tsx';
import { MixesNextTo } from './mixes-next-to.tsx';
import styles from './puddle-list.module.css';
import type { PuddleSource } from './puddle-source.ts';
import { ThreeRoads } from './three-roads.tsx';

interface PuddleDetailsProps extends PuddleSource {
  uses: readonly Mix[];
  nameOf: (paint: string) => string;
}

/** A puddle in whole parts, and what lies next to it. */
export function PuddleDetails({ uses, nameOf, plan, familyName, calls }: PuddleDetailsProps) {
  const chosen = useSignal(uses[0]?.id ?? '');
  const mix = uses.find(({ id }) => id === chosen.value) ?? uses[0];
  if (!mix) return null;
  return (
    <div class={styles.details}>
      <p class={styles.quiet}>
        {mix.parts.length > 1
          ? `Parts ${partsInNumbers(mix.parts)}, in the order named.`
          : 'One paint, nothing mixed in.'}
      </p>
      {calls && uses.length > 1 && (
        <ChoiceRow
          label="The colour this mix is for"
          choices={uses.map(({ id, family }) => [id, familyName(family)])}
          chosen={mix.id}
          onChoose={(next) => {
            chosen.value = next;
          }}
        />
      )}
      {calls && (
        <MixesNextTo
          key={mix.id}
          calls={calls}
          optics={plan.optics}
          below={mixesBelow(plan, mix)}
          mix={mix}
          nameOf={nameOf}
        />
      )}
      <ThreeRoads />
    </div>
  );
}
