import { useMemo } from 'preact/hooks';
import type { Pictures } from '../../../workers/analysis-api.ts';
import type { Point } from '../../model/lab.ts';
import type { MassWash } from '../../model/masses.ts';
import { washNames } from '../../model/masses-in-words.ts';
import type { Seen } from '../../state/seen.ts';
import { Picture } from '../common/picture.tsx';
import { PlaceStage } from '../strokes/place-stage.tsx';
import { type ColourView, familyLayer, photoLayer, washLayer } from './colour-layers.ts';
import type { FoundShapes } from './use-wash-shapes.ts';

interface ColoursPictureProps {
  seen: Seen;
  pictures: Pictures;
  view: ColourView;
  chosen: readonly number[];
  wash: MassWash;
  shapes: FoundShapes | null;
  onPlace: (place: Point) => void;
}

/** The picture in its colours, in the shapes of one wash, or as it is; a touch chooses a colour. */
export function ColoursPicture(props: ColoursPictureProps) {
  const { seen, pictures, view, chosen, wash, shapes, onPlace } = props;
  const families = useMemo(() => familyLayer(seen, chosen), [seen, chosen.join()]);
  const inShapes = useMemo(() => washLayer(seen, shapes), [seen, shapes]);
  const photo = useMemo(() => photoLayer(pictures.reference), [pictures.reference]);
  const names = seen.reading.families.filter(({ id }) => chosen.includes(id));
  const labels: Record<ColourView, string> = {
    families: names.length
      ? `Only ${names.map(({ name }) => name).join(' and ')}`
      : 'The picture in its colours',
    shapes: `The shapes to paint: ${washNames[wash].toLowerCase()}`,
    photo: 'Your reference',
  };
  return (
    <Picture
      label={labels[view]}
      size={seen.reading.raster}
      layers={{ families, shapes: inShapes, photo }}
      show={view}
      over={
        view !== 'shapes' && <PlaceStage label="Choose the colour at a place." onPlace={onPlace} />
      }
    />
  );
}
