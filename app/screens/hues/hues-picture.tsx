import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { slotLayer, withoutHue } from '../../drawing/layers.ts';
import type { ColourWish } from '../../model/colour-wish.ts';
import type { PaintCard } from '../../model/paint.ts';
import type { Decided } from '../common/decide-place.tsx';
import { Picture } from '../common/picture.tsx';
import { previewColours } from './preview-colours.ts';

interface HuesPictureProps extends Decided {
  wish: ColourWish;
  cards: readonly PaintCard[];
}

/** The picture in the colours she wants; a touch takes the hue out, to see that the values stay. */
export function HuesPicture({ seen, wish, cards }: HuesPictureProps) {
  const grey = useSignal(false);
  const layers = useMemo(() => {
    const colours = previewColours(seen.reading, wish, cards);
    return {
      colours: slotLayer(seen.slotMap, colours),
      values: slotLayer(seen.slotMap, withoutHue(colours)),
    };
  }, [seen, cards, JSON.stringify(wish)]);
  return (
    <Picture
      label={grey.value ? 'The values of the picture' : 'The picture in these colours'}
      tapLabel={grey.value ? 'Tap for colour' : 'Tap for grey'}
      size={seen.reading.raster}
      layers={layers}
      show={grey.value ? 'values' : 'colours'}
      tapShows={grey.value ? 'colours' : 'values'}
      onTap={() => {
        grey.value = !grey.value;
      }}
    />
  );
}
