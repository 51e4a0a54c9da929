import { useId } from 'preact/hooks';
import type { PaintProperties } from '../../core/paint/paint.ts';
import type { SettledDraft } from '../../core/paint/paint-draft.ts';
import {
  granulationWords,
  stainingWords,
  transparencyWords,
} from '../../core/words/paint/paint-traits.ts';
import { Button } from '../../ui/controls/button.tsx';
import styles from './paint-form.module.css';

type Hers = Partial<PaintProperties>;

interface TraitFieldsProps {
  settled: SettledDraft;
  hers: Hers;
  onChange: (hers: Hers) => void;
}

const steps = [0, 1, 2] as const;
const transparencies = ['T', 'ST', 'SO', 'O'] as const;

/** Her properties without one: it is as commonly given again. */
function dropTrait(hers: Hers, name: keyof PaintProperties): Hers {
  const { [name]: _, ...others } = hers;
  return others;
}

/** What is commonly given of these pigments, each to be put right by her. */
export function TraitFields({ settled, hers, onChange }: TraitFieldsProps) {
  const { properties } = settled;
  const choice = (name: keyof PaintProperties) => ({
    isHers: name in hers,
    onForget: () => onChange(dropTrait(hers, name)),
  });
  const text = (name: 'lightfastness' | 'caution', label: string, empty: string) => (
    <TextField
      label={label}
      long={name === 'caution'}
      hint={
        name in hers ? 'Yours.' : properties[name] ? 'As commonly given: check the label.' : empty
      }
      value={properties[name] ?? ''}
      onType={(typed) => onChange({ ...hers, [name]: typed.trim() ? typed : null })}
    />
  );
  return (
    <div class={styles.traits}>
      <TraitChoice
        title="Transparency"
        choices={transparencies.map((each) => [each, transparencyWords[each]] as const)}
        chosen={properties.transparency}
        onChoose={(transparency) => onChange({ ...hers, transparency })}
        {...choice('transparency')}
      />
      <TraitChoice
        title="Staining"
        choices={steps.map((each) => [each, stainingWords[each]] as const)}
        chosen={properties.staining}
        onChoose={(staining) => onChange({ ...hers, staining })}
        {...choice('staining')}
      />
      <TraitChoice
        title="Granulation"
        choices={steps.map((each) => [each, granulationWords[each]] as const)}
        chosen={properties.granulation}
        onChoose={(granulation) => onChange({ ...hers, granulation })}
        {...choice('granulation')}
      />
      {text('lightfastness', 'Lightfastness', 'Unknown. The label may give it, as I or II.')}
      {text('caution', 'Caution', settled.care)}
    </div>
  );
}

interface TraitChoiceProps<T extends string | number> {
  title: string;
  choices: readonly (readonly [value: T, text: string])[];
  /** Null: nobody knows. */
  chosen: T | null;
  /** She said so herself; else it is as commonly given. */
  isHers: boolean;
  onChoose: (value: T) => void;
  onForget: () => void;
}

/** One property, where it comes from, and the way back to what is commonly given. */
function TraitChoice<T extends string | number>(props: TraitChoiceProps<T>) {
  const { title, choices, chosen, isHers, onChoose, onForget } = props;
  return (
    <fieldset class={styles.trait}>
      <legend>
        {title}{' '}
        <span class={styles.quiet}>
          {isHers ? 'Yours.' : chosen === null ? 'Unknown.' : 'As commonly given.'}
        </span>
      </legend>
      {choices.map(([value, text]) => (
        <Button key={value} aria-pressed={value === chosen} onClick={() => onChoose(value)}>
          {text}
        </Button>
      ))}
      {isHers && (
        <Button look="quiet" aria-label={`${title} as commonly given`} onClick={onForget}>
          As commonly given
        </Button>
      )}
    </fieldset>
  );
}

interface TextFieldProps {
  label: string;
  hint?: string;
  value: string;
  /** Why what is typed can't be used; null where it can. */
  problem?: string | null;
  onType: (text: string) => void;
  /** More than a line is likely. */
  long?: boolean;
  /** She has finished typing. */
  onSettle?: () => void;
}

/** A line to type in, with what is wrong with it under it. */
export function TextField(props: TextFieldProps) {
  const { label, hint, value, problem = null, long = false, onType, onSettle } = props;
  const id = useId();
  const described = [hint && `${id}-hint`, problem && `${id}-problem`].filter(Boolean).join(' ');
  const Input = long ? 'textarea' : 'input';
  return (
    <div class={styles.field}>
      <label for={id}>{label}</label>
      {hint && (
        <span id={`${id}-hint`} class={styles.quiet}>
          {hint}
        </span>
      )}
      <Input
        id={id}
        class={styles.input}
        {...(long ? { rows: 2 } : { type: 'text' })}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        value={value}
        aria-invalid={problem !== null}
        aria-describedby={described || undefined}
        onInput={(event: { currentTarget: { value: string } }) => onType(event.currentTarget.value)}
        {...(onSettle && { onChange: onSettle })}
      />
      {problem && (
        <p id={`${id}-problem`} class={styles.problem} role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
