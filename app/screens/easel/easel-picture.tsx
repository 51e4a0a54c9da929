import type { Step } from '../../core/plan/plan.ts';
import type { Desk } from '../../state/session/desk.ts';
import { Picture } from '../../ui/picture/picture.tsx';
import { ZoomStage } from '../../ui/picture/zoom-stage.tsx';
import styles from './easel-picture.module.css';
import {
  type EaselView,
  type EaselViewState,
  easelLayer,
  easelViews,
  hasPlace,
  viewWords,
} from './use-easel-view.ts';

/** What a tap on another view may show. */
const aheadOf = (grey: boolean): string[] => easelViews.map((view) => easelLayer(view, grey));

/** The picture of a step: a tap on it for grey, two for nearer. */
export function EaselPicture({
  desk,
  title,
  view,
}: {
  desk: Desk;
  title: string;
  view: EaselViewState;
}) {
  const { raster } = desk.seen.reading;
  const shown = view.shown.value;
  const grey = view.grey.value;
  return (
    <ZoomStage zoom={view.zoom} ratio={raster.width / raster.height}>
      <Picture
        label={`${title}: ${viewWords[shown]}`}
        tapLabel={grey ? 'Tap for colour' : 'Tap for grey'}
        size={raster}
        layers={view.layers.value}
        show={easelLayer(shown, grey)}
        tapShows={easelLayer(shown, !grey)}
        ahead={aheadOf(grey)}
        onTap={view.toggleGrey}
      />
    </ZoomStage>
  );
}

const names: readonly (readonly [EaselView, string])[] = [
  ['where', 'Where'],
  ['reference', 'Photo'],
  ['band', 'Value'],
  ['sheet', 'Sheet'],
  ['edges', 'Edges'],
];

/** What the picture shows: each one tap. Grey goes with any of them. */
export function EaselViews({ view, step }: { view: EaselViewState; step: Step }) {
  return (
    <fieldset class={styles.views}>
      <legend class="spoken">Picture</legend>
      {names
        .filter(([name]) => name !== 'where' || hasPlace(step))
        .map(([name, text]) => (
          <button
            key={name}
            type="button"
            class={styles.view}
            aria-pressed={view.shown.value === name}
            onClick={() => view.look(name)}
          >
            {text}
          </button>
        ))}
      <button
        type="button"
        class={styles.view}
        aria-pressed={view.grey.value}
        onClick={view.toggleGrey}
      >
        Grey
      </button>
    </fieldset>
  );
}
