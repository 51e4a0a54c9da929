import {
  changeLoad,
  changeParts,
  type MixAmounts,
  takesAnother,
} from '../../core/plan/change-mix.ts';
import type { Mix, PaletteEntry } from '../../core/plan/plan.ts';
import { formatCount } from '../../core/words/numbers.ts';
import { Button } from '../controls/button.tsx';
import select from '../controls/select.module.css';
import styles from './mix-rows.module.css';

type PaintName = Pick<PaletteEntry, 'id' | 'name'>;

interface MixRowsProps {
  mix: Pick<Mix, 'parts' | 'load' | 'consistency'>;
  title: string;
  /** The paints of the palette. */
  palette: readonly PaintName[];
  onChange: (amounts: MixAmounts) => void;
}

/** One mix part by part, each a little more or less, one paint more, and its strength. */
export function MixRows({ mix, title, palette, onChange }: MixRowsProps) {
  const nameOf = (paint: string): string => palette.find(({ id }) => id === paint)?.name ?? paint;
  const others = palette.filter(({ id }) => !mix.parts.some(({ paint }) => paint === id));
  return (
    <fieldset class={styles.mix}>
      <legend>{title}</legend>
      {mix.parts.map(({ paint, parts }) => (
        <Counted
          key={paint}
          name={`${nameOf(paint)}, ${formatCount(parts, 'part')}`}
          less={`Less ${nameOf(paint)}`}
          more={`More ${nameOf(paint)}`}
          onStep={(by) => onChange(changeParts(mix, paint, by))}
        />
      ))}
      {takesAnother(mix) && others.length > 0 && (
        <select
          class={select.select}
          aria-label={`A touch of another paint, ${title}`}
          value=""
          onChange={({ currentTarget }) => onChange(changeParts(mix, currentTarget.value, 1))}
        >
          <option value="">A touch of another paint …</option>
          {others.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      )}
      <Counted
        name={`Strength: ${mix.consistency}`}
        less="Weaker"
        more="Stronger"
        onStep={(by) => onChange(changeLoad(mix, by))}
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
