import type { PaintProperties } from '../../model/paint.ts';
import type { SettledDraft } from '../../model/paint-draft.ts';
import { granulationWords, stainingWords, transparencyWords } from '../../model/paint-traits.ts';
import styles from './paint-form.module.css';
import { TextField } from './text-field.tsx';
import { TraitChoice } from './trait-choice.tsx';

type Hers = Partial<PaintProperties>;

interface TraitFieldsProps {
  settled: SettledDraft;
  hers: Hers;
  onChange: (hers: Hers) => void;
}

const steps = [0, 1, 2] as const;
const transparencies = ['T', 'ST', 'SO', 'O'] as const;

/** Her properties without one: it comes from memory again. */
function without(hers: Hers, name: keyof PaintProperties): Hers {
  const { [name]: _, ...others } = hers;
  return others;
}

/** What the trade remembers of these pigments, each to be put right by her. */
export function TraitFields({ settled, hers, onChange }: TraitFieldsProps) {
  const { properties } = settled;
  const choice = (name: keyof PaintProperties) => ({
    isHers: name in hers,
    onRemember: () => onChange(without(hers, name)),
  });
  const text = (name: 'lightfastness' | 'caution', label: string, empty: string) => (
    <TextField
      label={label}
      long={name === 'caution'}
      hint={name in hers ? 'Yours.' : properties[name] ? 'From memory: check the label.' : empty}
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
      {text('caution', 'Caution', 'None remembered: check the label.')}
    </div>
  );
}
