import { useSignal } from '@preact/signals';
import { useEffect, useId, useRef } from 'preact/hooks';
import { newPaint, type PaintDraft } from '../../model/paint-draft.ts';
import type { OwnBoxState } from '../../state/own-box.ts';
import type { PaintDraftsState } from '../../state/paint-drafts.ts';
import { Button } from '../common/button.tsx';
import { LikePicker } from './like-picker.tsx';
import styles from './paint-form.module.css';
import { TextField } from './text-field.tsx';
import { TraitFields } from './trait-fields.tsx';

interface PaintFormProps {
  /** Key of the draft: a paint's id, or `newPaint`. */
  of: string;
  paintDrafts: PaintDraftsState;
  ownBox: OwnBoxState;
  /** It is saved or dropped, and goes away. */
  onDone: () => void;
}

/** A paint of her own, typed: names, properties, and what it behaves like until it is measured. */
export function PaintForm({ of, paintDrafts, ownBox, onDone }: PaintFormProps) {
  const id = useId();
  const asked = useSignal(false); // to save it: then what is missing is said
  const namesTyped = useSignal(false);
  const refused = useSignal(0);
  const form = useRef<HTMLFormElement>(null);
  const draft = paintDrafts.drafts.value[of];
  const settled = paintDrafts.settled(of);
  const measured = ownBox.cards.value.find((card) => card.id === of)?.optics?.from === 'measured';
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
  const change = (how: Partial<PaintDraft>): void => paintDrafts.change(of, how);
  const { name, ci, like } = settled.problems;

  async function save(): Promise<void> {
    asked.value = true;
    if (await paintDrafts.save(of)) onDone();
    else refused.value++;
  }

  return (
    <form
      ref={form}
      class={styles.form}
      aria-label={of === newPaint ? 'A new paint' : `Change ${draft.name}`}
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
          {of === newPaint ? 'Put it in the box' : 'Keep the change'}
        </Button>
        <Button
          onClick={() => {
            onDone();
            paintDrafts.drop(of);
          }}
        >
          Leave it
        </Button>
      </p>
    </form>
  );
}
