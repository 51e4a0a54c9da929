import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { withTick } from '../../core/paint/own-box.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import {
  builtInOfName,
  newPaint,
  type PaintDraft,
  paintsToPickFrom,
} from '../../core/paint/paint-draft.ts';
import { capitalize } from '../../core/words/numbers.ts';
import { opticsInWords } from '../../core/words/paint/measured-paint.ts';
import { madeOfInWords, pigmentsInWords } from '../../core/words/paint/paint-words.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import type { PaintDraftsState } from '../../state/paints/paint-drafts.ts';
import { Button } from '../../ui/controls/button.tsx';
import { PaintLadder } from '../../ui/controls/paint-ladder.tsx';
import styles from './paint-form.module.css';
import { TextField, TraitFields } from './trait-fields.tsx';

interface PaintFormProps {
  /** Key of the draft: a paint's id, or `newPaint`. */
  draftKey: string;
  paintDrafts: PaintDraftsState;
  ownBox: OwnBoxState;
  /** It is saved or dropped, and goes away. */
  onDone: () => void;
}

/** A paint of her own, typed: names, properties, and what it behaves like until it is measured. */
export function PaintForm({ draftKey, paintDrafts, ownBox, onDone }: PaintFormProps) {
  const id = useId();
  const asked = useSignal(false); // to save it: then what is missing is said
  const namesTyped = useSignal(false);
  const refused = useSignal(0);
  const form = useRef<HTMLFormElement>(null);
  const draft = paintDrafts.drafts.value[draftKey];
  const settled = paintDrafts.settle(draftKey);
  const measured =
    ownBox.cards.value.find((card) => card.id === draftKey)?.optics?.from === 'measured';
  // Only a form she has just opened takes the focus, not one kept from the last visit.
  useEffect(() => {
    if (draft?.name === '' && draft.ci === '') form.current?.querySelector('input')?.focus();
  }, []);
  // Once the sentences stand there: to the first thing that is missing.
  useEffect(() => {
    if (refused.value > 0)
      form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [refused.value]);
  if (!draft || !settled) return null;
  const change = (how: Partial<PaintDraft>): void => paintDrafts.change(draftKey, how);
  const { name, ci, like } = settled.problems;
  const builtIn = draftKey === newPaint ? builtInOfName(draft.name, ownBox.cards.value) : null;

  function takeBuiltIn({ id: builtInId }: PaintCard): void {
    void ownBox.change((before) => withTick(before, builtInId, true));
    onDone();
    paintDrafts.drop(draftKey);
  }

  async function save(): Promise<void> {
    asked.value = true;
    if (await paintDrafts.save(draftKey)) onDone();
    else refused.value++;
  }

  return (
    <form
      ref={form}
      class={styles.form}
      aria-label={draftKey === newPaint ? 'A new paint' : `Change ${draft.name}`}
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <TextField
        label="Name, in your words"
        value={draft.name}
        problem={asked.value ? name : null}
        onType={(text) => change({ name: text })}
      />
      {builtIn && (
        <p class={styles.builtIn} role="status">
          {capitalize(builtIn.name)} is in the list.{' '}
          {madeOfInWords(builtIn) ?? `${pigmentsInWords(builtIn)}.`}{' '}
          <Button onClick={() => takeBuiltIn(builtIn)}>Tick that one instead</Button>
        </p>
      )}
      <TextField
        label="Colour Index names"
        hint="From the label, several with commas: PB29, PY150"
        value={draft.ci}
        problem={asked.value || namesTyped.value ? ci : null}
        onType={(text) => {
          namesTyped.value = false; // not while she is in the middle of it
          change({ ci: text });
        }}
        onSettle={() => {
          namesTyped.value = draft.ci.trim() !== '';
        }}
      />
      <TraitFields settled={settled} hers={draft.hers} onChange={(hers) => change({ hers })} />
      <LikePicker
        id={id}
        cards={ownBox.cards.value}
        names={settled.ci}
        name={settled.name}
        like={settled.like}
        measured={measured}
        problem={asked.value && !ci ? like : null}
        onPick={(picked) => change({ like: picked })}
      />
      <p class={styles.actions}>
        <Button look="main" type="submit">
          {draftKey === newPaint ? 'Add' : 'Keep the change'}
        </Button>
        <Button
          onClick={() => {
            onDone();
            paintDrafts.drop(draftKey);
          }}
        >
          Cancel
        </Button>
      </p>
    </form>
  );
}

interface LikePickerProps {
  /** Name of the group of choices on the page. */
  id: string;
  cards: readonly PaintCard[];
  /** Her Colour Index names and her name for the paint: what is like it stands first. */
  names: readonly string[];
  name: string;
  like: string | null;
  measured: boolean;
  problem: string | null;
  onPick: (id: string) => void;
}

/** Until it is measured a paint behaves like a built-in one: which, by their ladders. */
function LikePicker(props: LikePickerProps) {
  const { id, cards, names, name, like, measured, problem, onPick } = props;
  const offered = paintsToPickFrom(names, name, cards);
  const picked = offered.find((card) => card.id === like);
  const details = useRef<HTMLDetailsElement>(null);
  // She has to see the list when she has to pick.
  useEffect(() => {
    if (problem && details.current) details.current.open = true;
  }, [problem]);
  return (
    <details ref={details} class={styles.picker}>
      <summary class={styles.summary}>
        {picked
          ? opticsInWords(picked.name)
          : measured
            ? opticsInWords(null)
            : 'Which built-in paint does it look like?'}
      </summary>
      {problem && (
        <p class={styles.problem} role="alert">
          {problem}
        </p>
      )}
      <fieldset class={styles.list}>
        <legend class={styles.likePickerQuiet}>
          Until it is measured from a photo it is mixed like the one you pick.
        </legend>
        {offered.map((card, i) => (
          <label key={card.id} class={styles.choice}>
            <input
              type="radio"
              name={`${id}-like`}
              class={styles.mark}
              aria-invalid={i === 0 && problem !== null}
              checked={card.id === like}
              onChange={() => onPick(card.id)}
            />
            <PaintLadder class={styles.ladder} ladder={card.ladder} />
            <span>
              {card.name} <span class={styles.likePickerQuiet}>{pigmentsInWords(card)}</span>
            </span>
          </label>
        ))}
      </fieldset>
    </details>
  );
}
