import { type Signal, useSignal } from '@preact/signals';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import styles from './compared-picture.module.css';

/** What can stand on either side of the line. */
export type Side = 'reference' | 'planned' | 'painting' | 'mended';

export const pairs = {
  plan: ['planned', 'painting', 'Plan, painting'],
  reference: ['reference', 'painting', 'Reference, painting'],
  both: ['reference', 'planned', 'Reference, plan'],
  mended: ['painting', 'mended', 'Now, then'],
} as const;
type Pair = keyof typeof pairs;

export const sideWords: Readonly<Record<Side, string>> = {
  reference: 'the reference',
  planned: 'as planned',
  painting: 'your painting',
  mended: 'your painting, mended',
};

const lookWords = [
  ['split', 'Split'],
  ['blink', 'Blink'],
  ['room', 'Across the room'],
] as const;
type LookAt = (typeof lookWords)[number][0];

/** How the pictures are looked at. */
export interface ComparedView {
  readonly pair: Pair;
  readonly look: LookAt;
  readonly grey: boolean;
  /** Where the line stands, 0..1 from the left. */
  readonly split: number;
  /** Blinking: the second of the pair is seen. */
  readonly second: boolean;
  /** Blinking goes on by itself. */
  readonly runs: boolean;
}

export const firstView: ComparedView = {
  pair: 'plan',
  look: 'split',
  grey: false,
  split: 0.5,
  second: true,
  runs: false,
};

/** What is compared and how, by buttons: all that fingers do on the picture. */
export function ComparedChoices({ view, mended }: { view: Signal<ComparedView>; mended: boolean }) {
  const { pair, look, grey, split, second, runs } = view.value;
  const set = (change: Partial<ComparedView>): void => {
    view.value = { ...view.peek(), ...change };
  };
  const stillAsked = useSignal(matchMedia('(prefers-reduced-motion: reduce)').matches);
  const choices = (Object.keys(pairs) as Pair[])
    .filter((each) => each !== 'mended' || mended)
    .map((each) => [each, pairs[each][2]] as const);
  const [one, other] = pairs[pair];
  return (
    <div class={styles.choices}>
      <ChoiceRow
        label="Which two"
        wraps
        choices={choices}
        chosen={pair}
        onChoose={(next) => set({ pair: next })}
      />
      <ChoiceRow
        label="How"
        choices={lookWords}
        chosen={look}
        onChoose={(next) => set({ look: next, runs: false })}
      />
      <div class={styles.row}>
        <Button
          aria-pressed={grey || look === 'room'}
          disabled={look === 'room'}
          onClick={() => set({ grey: !grey })}
        >
          In grey
        </Button>
        {look === 'blink' ? (
          <>
            <Button onClick={() => set({ second: !second, runs: false })}>
              Show {sideWords[second ? one : other]}
            </Button>
            {!stillAsked.value && (
              <Button aria-pressed={runs} onClick={() => set({ runs: !runs })}>
                By itself
              </Button>
            )}
          </>
        ) : (
          <>
            <Button
              aria-label="Line to the left"
              onClick={() => set({ split: Math.max(0, split - 0.1) })}
            >
              ◁ Line
            </Button>
            <Button
              aria-label="Line to the right"
              onClick={() => set({ split: Math.min(1, split + 0.1) })}
            >
              Line ▷
            </Button>
          </>
        )}
      </div>
    </div>
  );
}
