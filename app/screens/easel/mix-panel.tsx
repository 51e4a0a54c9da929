import { loadChanged, type MixAmounts, partsChanged } from '../../model/change-mix.ts';
import type { Mix } from '../../model/wash-plan.ts';
import type { Easel } from '../../state/easel.ts';
import { Button } from '../common/button.tsx';
import { Fold } from './fold.tsx';
import styles from './more-panel.module.css';

/** What she really mixed, where it is not what was planned: it stands in the record. */
export function MixPanel({ easel }: { easel: Easel }) {
  const { value: desk } = easel.desk;
  const { value: step } = easel.step;
  const mixes = easel.record.value?.mixes.filter(({ id }) => step?.mixes.includes(id)) ?? [];
  if (!desk || mixes.length === 0) return null;
  const nameOf = (paint: string): string =>
    desk.plan.palette.find(({ id }) => id === paint)?.name ?? paint;
  return (
    <Fold title="Mixed otherwise">
      <p class={styles.quiet}>
        As you really mixed it, for the record and for next time. The picture stays as planned.
      </p>
      {mixes.map((mix) => (
        <MixRows
          key={mix.id}
          mix={mix}
          title={`For the ${desk.familyName(mix.family)}`}
          nameOf={nameOf}
          onChange={(amounts) => easel.tell({ kind: 'mix-changed', mix: mix.id, ...amounts })}
        />
      ))}
    </Fold>
  );
}

interface MixRowsProps {
  mix: Mix;
  title: string;
  nameOf: (paint: string) => string;
  onChange: (amounts: MixAmounts) => void;
}

function MixRows({ mix, title, nameOf, onChange }: MixRowsProps) {
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
