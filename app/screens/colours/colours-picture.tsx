import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { Pictures } from '../../../workers/api.ts';
import type { Lab, Point } from '../../core/colour/lab.ts';
import type { MassSizes, MassWash } from '../../core/reading/masses.ts';
import type { WashShapes } from '../../core/reading/shapes/wash-masses.ts';
import { joinWords } from '../../core/words/numbers.ts';
import { washNames } from '../../core/words/reading/masses.ts';
import { bitmapLayer, type Layer, slotLayer } from '../../drawing/layers.ts';
import { shapesLayer } from '../../drawing/shapes-layer.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { Picture } from '../../ui/picture/picture.tsx';
import { PlaceStage } from '../../ui/pointer/place-stage.tsx';

interface ColoursPictureProps {
  seen: OpenedReading;
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
      ? `Only ${joinWords(names.map(({ name }) => name))}`
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

export type ColourView = 'families' | 'shapes' | 'photo';

/** What is not looked at: grey, and paled towards the surround so that the drawing still shows. */
const dim = ([lightness]: Lab): Lab => [62 + 0.3 * (lightness - 50), 0, 0];

/** The picture in its colour families; of these only the ones chosen, if any is. */
function familyLayer({ reading, slotMap }: OpenedReading, chosen: readonly number[]): Layer {
  const colours = reading.slots.map(({ family, lab }) =>
    chosen.length === 0 || chosen.includes(family) ? lab : dim(lab),
  );
  return slotLayer(slotMap, colours);
}

/** The shapes of a wash over the picture; the picture alone until there are any of its size. */
function washLayer(seen: OpenedReading, found: FoundShapes | null): Layer {
  if (found?.seen.slotMap.length !== seen.slotMap.length) return familyLayer(seen, []);
  const { reading, slotMap } = found.seen;
  return shapesLayer(
    found.shapes,
    slotMap,
    reading.slots.map(({ lab }) => lab),
  );
}

const photoLayer = (reference: ImageBitmap): Layer => bitmapLayer(reference);

/** The shapes of one wash, and the reading they were found in. */
interface FoundShapes {
  readonly seen: OpenedReading;
  readonly shapes: WashShapes;
}

/** Shapes of one wash of what is seen; the last ones stay until the next are found. */
export function useWashShapes(
  studio: Studio,
  wash: MassWash | null,
  sizes: MassSizes,
): FoundShapes | null {
  const found = useSignal<FoundShapes | null>(null);
  const seen = studio.seen.value;
  const size = wash && sizes[wash];
  useEffect(() => {
    if (!seen || !wash) return;
    const controller = new AbortController();
    studio.washShapes(controller.signal, wash, sizes).then(
      (shapes) => {
        if (!controller.signal.aborted) found.value = shapes && { seen, shapes };
      },
      () => {
        // The picture of the shapes stays away; what went wrong in the worker the studio says.
        if (!controller.signal.aborted) found.value = null;
      },
    );
    return () => controller.abort();
  }, [studio, seen, wash, size]);
  return found.value;
}
