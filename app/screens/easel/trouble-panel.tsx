import { useSignal } from '@preact/signals';
import type { Wetness } from '../../core/drying/wetness.ts';
import { waterKindOf } from '../../core/plan/water-kind.ts';
import { wetnessNow } from '../../core/session/choose-cue.ts';
import {
  type RemedyState,
  remedyStateOf,
  type Trouble,
  troubles,
} from '../../core/session/trouble.ts';
import { wetnessSign } from '../../core/words/drying/drying-words.ts';
import { remedyFor, troubleWords } from '../../core/words/session/trouble.ts';
import type { Easel } from '../../state/session/easel.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { Fold } from './fold.tsx';
import styles from './more-panels.module.css';

const states = [
  ['wet', 'Shiny'],
  ['satin', 'Shine going'],
  ['cool', 'Dull, cool'],
  ['dry', 'Bone dry'],
] as const;

const wetnessOf: Record<RemedyState, Wetness> = {
  wet: 'shiny',
  satin: 'satin',
  cool: 'damp',
  dry: 'bone dry',
};

/** What went wrong, and the one thing to do about it while the sheet is as wet as it is now. */
export function TroublePanel({ easel }: { easel: Easel }) {
  const said = useSignal<RemedyState | null>(null);
  const trouble = useSignal<Trouble | null>(null);
  const step = easel.step.value;
  const { atMs } = easel.time.value;
  const reckoned = wetnessNow(easel.session.value, !!step && waterKindOf(step) !== null, atMs);
  const state = said.value ?? remedyStateOf[reckoned];
  const wetnessIn = (which: RemedyState): Wetness =>
    remedyStateOf[reckoned] === which ? reckoned : wetnessOf[which];
  const wetness = wetnessIn(state);
  const tell = (next: Trouble, how = wetness): void => {
    trouble.value = next;
    if (step) easel.tell({ kind: 'trouble', key: step.key, trouble: next, wetness: how });
  };
  return (
    <Fold title="Something is wrong" open>
      <h4>The sheet there: {wetnessSign[wetness]}</h4>
      <ChoiceRow
        label="How wet the sheet is there"
        choices={states}
        chosen={state}
        onChoose={(chosen) => {
          said.value = chosen;
          if (trouble.value) tell(trouble.value, wetnessIn(chosen)); // the remedy follows
        }}
      />
      <div aria-live="polite" class={styles.panel}>
        {trouble.value && (
          <>
            <p class={styles.remedy} data-testid="remedy">
              {remedyFor(trouble.value, wetness)}
            </p>
            <p class="quiet">{troubleWords[trouble.value]}: it stands in the record.</p>
            <Button
              large
              onClick={() => {
                trouble.value = null;
              }}
            >
              Something else
            </Button>
          </>
        )}
      </div>
      {!trouble.value && (
        <div class={styles.choices}>
          {troubles.map((each) => (
            <Button key={each} large onClick={() => tell(each)}>
              {troubleWords[each]}
            </Button>
          ))}
        </div>
      )}
    </Fold>
  );
}
