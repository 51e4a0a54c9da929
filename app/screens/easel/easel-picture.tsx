import type { Desk } from '../../state/easel.ts';
import { Picture } from '../common/picture.tsx';
import { ZoomStage } from '../common/zoom-stage.tsx';
import { easelLayer, easelViews, viewWords } from './easel-view.ts';
import type { EaselViewState } from './use-easel-view.ts';

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
