import { loadChanged, type MixAmounts, partsChanged } from '../../model/change-mix.ts';
import type { Mix } from '../../model/wash-plan.ts';
import { Button } from './button.tsx';
import styles from './mix-rows.module.css';

interface MixRowsProps {
  mix: Pick<Mix, 'parts' | 'load' | 'consistency'>;
  title: string;
  /** Paint id -> its name. */
  nameOf: (paint: string) => string;
  onChange: (amounts: MixAmounts) => void;
}

/** One mix part by part, each a little more or less, and its strength. */
export function MixRows({ mix, title, nameOf, onChange }: MixRowsProps) {
  return (
    <fieldset class={styles.mix}>
      <legend>{title}</legend>
      {mix.parts.map(({ paint, parts }) => (
        <Counted
          key={paint}
          name={`${nameOf(paint)}, ${parts} ${parts === 1 ? 'part' : 'parts'}`}
          less={`Less ${nameOf(paint)}`}
          more={`More ${nameOf(paint)}`}
          onStep={(by) => onChange(partsChanged(mix, paint, by))}
        />
      ))}
      <Counted
        name={`Strength: ${mix.consistency}`}
        less="Weaker"
        more="Stronger"
        onStep={(by) => onChange(loadChanged(mix, by))}
      />
    </fieldset>
  );
}

interface CountedProps {
  name: string;
  less: string;
  more: string;
  onStep: (by: 1 | -1) => void;
}

function Counted({ name, less, more, onStep }: CountedProps) {
  return (
    <div class={styles.row}>
      <span>{name}</span>
      <span>
        <Button aria-label={less} onClick={() => onStep(-1)}>
          −
        </Button>{' '}
        <Button aria-label={more} onClick={() => onStep(1)}>
          +
        </Button>
      </span>
    </div>
  );
}
