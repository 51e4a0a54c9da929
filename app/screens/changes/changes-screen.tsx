import { bitmapLayer } from '../../drawing/layers.ts';
import type { Studio } from '../../state/studio.ts';
import { DecidePlace } from '../common/decide-place.tsx';
import { Picture } from '../common/picture.tsx';

export function ChangesScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  return (
    <DecidePlace
      studio={studio}
      paintingId={paintingId}
      name="changes"
      title="Paint it otherwise"
      kinds={['alter', 'ground']}
      picture={({ pictures, seen }) => (
        <Picture
          label="Your reference"
          size={seen.reading.raster}
          layers={{ colour: bitmapLayer(pictures.reference) }}
          show="colour"
        />
      )}
      panel={() => null}
    />
  );
}
