import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { Step } from '../../core/plan/plan.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import { createQuickLook, type QuickLookCalls } from '../../state/session/quick-look.ts';
import { TakeOrChoose } from '../../ui/controls/photo-input.tsx';
import { Picture } from '../../ui/picture/picture.tsx';
import { pictureLayers } from '../../ui/picture/picture-layers.ts';
import { Fold } from './fold.tsx';
import styles from './more-panels.module.css';
import { type EaselViewState, easelLayer } from './use-easel-view.ts';

interface QuickLookPanelProps {
  calls: QuickLookCalls;
  step: Pick<Step, 'kind'>;
  view: EaselViewState;
  /** Of the plan's pictures. */
  size: PixelSize;
}

/** Her sheet beside what was planned for it, both in grey and of one size: she judges, nothing is measured. */
export function QuickLookPanel({ calls, step, view, size }: QuickLookPanelProps) {
  const look = useMemo(() => createQuickLook(calls), [calls]);
  useEffect(() => look.leave, [look]);
  const grey = useSignal(true);
  const seen = look.pictures.value;
  const own = useMemo(() => (seen ? pictureLayers(seen) : null), [seen]);
  const drawn = step.kind === 'transfer' ? 'edges' : 'sheet';
  const turn = (): void => {
    grey.value = !grey.value;
  };
  const take = (file: File): void => void look.take(file);
  const tapLabel = grey.value ? 'Tap for colour' : 'Tap for grey';
  return (
    <Fold title="Your sheet in grey">
      <TakeOrChoose onFile={take} />
      {look.problem.value !== null && <p role="alert">{look.problem.value}</p>}
      <p role="status">{look.working.value && 'Your sheet is being looked at …'}</p>
      {seen && own && (
        <>
          <div class={styles.beside} data-testid="quick-look">
            <figure>
              <Picture
                label="Your sheet"
                tapLabel={tapLabel}
                size={seen.grey}
                layers={own}
                show={grey.value ? 'grey' : 'colour'}
                tapShows={grey.value ? 'colour' : 'grey'}
                onTap={turn}
              />
              <figcaption>Your sheet</figcaption>
            </figure>
            <figure>
              <Picture
                label="As planned"
                tapLabel={tapLabel}
                size={size}
                layers={view.layers.value}
                show={easelLayer(drawn, grey.value)}
                tapShows={easelLayer(drawn, !grey.value)}
                onTap={turn}
              />
              <figcaption>{drawn === 'edges' ? 'The edges to draw' : 'As planned'}</figcaption>
            </figure>
          </div>
          <p>
            {drawn === 'edges'
              ? 'Half close your eyes: do the big shapes lie where they should?'
              : 'Half close your eyes: are lights and darks in the same places, and as far apart?'}
          </p>
        </>
      )}
    </Fold>
  );
}
