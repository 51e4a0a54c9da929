import type { ReadonlySignal } from '@preact/signals';
import type { Pictures } from '../../../workers/analysis-api.ts';
import type { Studio } from '../../state/studio.ts';
import { Picture } from '../common/picture.tsx';
import { type Look, layerAfterTap, shownLayer, showsGrey, toggleGrey } from './use-look.ts';
import { useStudyLayers } from './use-study-layers.ts';
import { kitOf, type ToolsState } from './use-study-tools.ts';

interface LookPictureProps {
  studio: Studio;
  look: Look;
  tools: ReadonlySignal<ToolsState>;
  pictures: Pictures;
}

/** The picture of the study: by itself, so that a tap on it has nothing else to draw anew. */
export function LookPicture({ studio, look, tools, pictures }: LookPictureProps) {
  const layers = useStudyLayers(studio, look, tools);
  const kit = kitOf(tools.value);
  return (
    <Picture
      label="Your reference"
      tapLabel={showsGrey(look) ? 'Tap for colour' : 'Tap for grey'}
      size={pictures.grey}
      layers={layers}
      show={shownLayer(look)}
      tapShows={layerAfterTap(look)}
      ahead={['colour', 'grey', 'values']}
      onTap={() => toggleGrey(look)}
      turn={look.turn.value}
      over={
        kit &&
        studio.seen.value &&
        look.touching.value && (
          <kit.SpotStage
            look={look}
            bitmap={look.view.value === 'grey' ? pictures.grey : pictures.reference}
          />
        )
      }
    />
  );
}
