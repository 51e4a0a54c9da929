import { familyNameIn } from '../../core/plan/family-name-in.ts';
import { unitOf } from '../../core/plan/plan.ts';
import type { Easel } from '../../state/session/easel.ts';
import type { Keepsakes } from '../../state/session/keepsakes.ts';
import { MixRows } from '../../ui/mixes/mix-rows.tsx';
import { AddNote, AddPhoto } from '../record/add-keepsake.tsx';
import { Fold } from './fold.tsx';

interface KeepsakePanelProps {
  easel: Easel;
  keepsakes: Keepsakes;
  sessionId: string;
}

export const PhotoPanel = (props: KeepsakePanelProps) => (
  <Fold title="Photo for the record">
    <AddPhoto {...props} />
  </Fold>
);

export const NotePanel = (props: KeepsakePanelProps) => (
  <Fold title="Note">
    <AddNote {...props} />
  </Fold>
);

/** What she really mixed, where it is not what was planned: it stands in the record. */
export function MixPanel({ easel }: { easel: Easel }) {
  const { value: desk } = easel.desk;
  const { value: step } = easel.step;
  const mixes = easel.record.value?.mixes.filter(({ id }) => step?.mixes.includes(id)) ?? [];
  if (!desk || mixes.length === 0) return null;
  const familyName = familyNameIn(desk.plan, desk.seen.reading);
  return (
    <Fold title="Change the mix">
      <p class="quiet">
        As you really mixed it, for the record and for next time. The picture stays as planned.
      </p>
      {mixes.map((mix) => (
        <MixRows
          key={mix.id}
          mix={mix}
          title={`For the ${familyName(mix.family)}`}
          palette={desk.plan.palette}
          onChange={(amounts) =>
            easel.tell({ kind: 'mix-changed', mix: mix.id, ...amounts, ...unitOf(desk.plan) })
          }
        />
      ))}
    </Fold>
  );
}
