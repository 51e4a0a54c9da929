import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { readingWishes } from '../../model/wishes.ts';
import type { Studio } from '../../state/studio.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import { DecidePlace } from '../common/decide-place.tsx';
import { Picture } from '../common/picture.tsx';
import { PlaceStage } from '../strokes/place-stage.tsx';
import { type ColourView, colourLayers } from './colour-layers.ts';
import styles from './colours-panel.module.css';
import { FamilyActions } from './family-actions.tsx';
import { familyAt } from './family-at.ts';
import { FamilyRows } from './family-rows.tsx';
import { ShapeSizes } from './shape-sizes.tsx';
import { useChosenFamilies } from './use-chosen-families.ts';

/** She sees the picture in its colours, joins and parts them, and says how small a shape may be. */
export function ColoursScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  const view = useSignal<ColourView>('families');
  const seenNow = studio.seen.value;
  const reference = studio.pictures.value?.reference;
  const chosen = useChosenFamilies(seenNow);
  const key = chosen.ids.join();
  const layers = useMemo(
    () => (seenNow && reference ? colourLayers(seenNow, reference, chosen.ids) : null),
    [seenNow, reference, key],
  );
  const stage = studio.work.value?.stage;
  const reading = stage !== undefined && stage !== 'paints' && stage !== 'washes';
  return (
    <DecidePlace
      studio={studio}
      paintingId={paintingId}
      name="colours"
      title="Colours and shapes"
      kinds={['families', 'smallest']}
      picture={({ seen }) => {
        const names = seen.reading.families
          .filter(({ id }) => chosen.ids.includes(id))
          .map(({ name }) => name);
        const alone = names.length ? `Only ${names.join(' and ')}` : 'The picture in its colours';
        return (
          <Picture
            label={view.value === 'photo' ? 'Your reference' : alone}
            size={seen.reading.raster}
            layers={layers ?? {}}
            show={view.value}
            over={
              <PlaceStage
                label="Choose the colour at a place."
                onPlace={(place) => {
                  const family = familyAt(seen, place);
                  if (family === null) return;
                  view.value = 'families';
                  chosen.toggle(family);
                }}
              />
            }
          />
        );
      }}
      panel={({ painting, seen }) => {
        const wishes = readingWishes(painting.decisions, painting.reference);
        return (
          <div class={styles.panel}>
            <ChoiceRow
              label="What the picture shows"
              choices={[
                ['families', 'In its colours'],
                ['photo', 'The photo'],
              ]}
              chosen={view.value}
              onChoose={(next) => {
                view.value = next;
              }}
            />
            <FamilyRows
              families={seen.reading.families}
              chosen={chosen.ids}
              onToggle={(id) => {
                view.value = 'families';
                chosen.toggle(id);
              }}
            />
            <FamilyActions
              seen={seen}
              chosen={chosen.ids}
              reading={reading}
              own={wishes.familyEdits !== undefined}
              onEdit={(edit) => {
                chosen.clear();
                void studio.decide({ kind: 'families', edit });
              }}
            />
            <ShapeSizes
              reading={seen.reading}
              wished={wishes.smallest}
              onDecide={(sizes) => void studio.decide({ kind: 'smallest', sizes })}
            />
          </div>
        );
      }}
    />
  );
}
