import { familyNameIn } from '../../model/family-name-in.ts';
import type { Easel } from '../../state/easel.ts';
import { MixRows } from '../common/mix-rows.tsx';
import { Fold } from './fold.tsx';
import styles from './more-panel.module.css';

/** What she really mixed, where it is not what was planned: it stands in the record. */
export function MixPanel({ easel }: { easel: Easel }) {
  const { value: desk } = easel.desk;
  const { value: step } = easel.step;
  const mixes = easel.record.value?.mixes.filter(({ id }) => step?.mixes.includes(id)) ?? [];
  if (!desk || mixes.length === 0) return null;
  const familyName = familyNameIn(desk.plan, desk.seen.reading);
  return (
    <Fold title="Mixed otherwise">
      <p class={styles.quiet}>
        As you really mixed it, for the record and for next time. The picture stays as planned.
      </p>
      {mixes.map((mix) => (
        <MixRows
          key={mix.id}
          mix={mix}
          title={`For the ${familyName(mix.family)}`}
          palette={desk.plan.palette}
          onChange={(amounts) => easel.tell({ kind: 'mix-changed', mix: mix.id, ...amounts })}
        />
      ))}
    </Fold>
  );
}
