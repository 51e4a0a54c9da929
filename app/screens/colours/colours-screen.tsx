import { useSignal } from '@preact/signals';
import type { MassWash } from '../../model/masses.ts';
import { shapesInWords } from '../../model/masses-in-words.ts';
import { smallestSizes } from '../../model/smallest-sizes.ts';
import { readingWishes } from '../../model/wishes.ts';
import type { Studio } from '../../state/studio.ts';
import { Button } from '../common/button.tsx';
import { ChoiceRow } from '../common/choice-row.tsx';
import { DecidePlace } from '../common/decide-place.tsx';
import type { ColourView } from './colour-layers.ts';
import styles from './colours-panel.module.css';
import { ColoursPicture } from './colours-picture.tsx';
import { FamilyActions } from './family-actions.tsx';
import { familyAt } from './family-at.ts';
import { FamilyRows } from './family-rows.tsx';
import { ShapeSizes } from './shape-sizes.tsx';
import { useChosenFamilies } from './use-chosen-families.ts';
import { useMovedSizes } from './use-moved-sizes.ts';
import { useWashShapes } from './use-wash-shapes.ts';

const views: readonly (readonly [ColourView, string])[] = [
  ['families', 'Colours'],
  ['shapes', 'Shapes'],
  ['photo', 'Photo'],
];
const washes: readonly (readonly [MassWash, string])[] = [
  ['firstWash', 'First wash'],
  ['second', 'Second'],
  ['darks', 'Darks'],
];

/** She sees the picture in its colours, joins and parts them, and says how small a shape may be. */
export function ColoursScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  const view = useSignal<ColourView>('families');
  const wash = useSignal<MassWash>('firstWash');
  const chosen = useChosenFamilies(studio.seen.value);
  const painting = studio.painting.value;
  const wishes = painting ? readingWishes(painting.decisions, painting.reference) : {};
  const moved = useMovedSizes(
    smallestSizes(wishes.smallest),
    (sizes) => void studio.decide({ kind: 'smallest', sizes }),
  );
  const found = useWashShapes(studio, view.value === 'shapes' ? wash.value : null, moved.sizes);
  const stage = studio.work.value?.stage;
  const reading = stage !== undefined && stage !== 'paints' && stage !== 'washes';
  const choose = (family: number): void => {
    view.value = 'families';
    chosen.toggle(family);
  };
  return (
    <DecidePlace
      studio={studio}
      paintingId={paintingId}
      name="colours"
      title="Colours and shapes"
      kinds={['families', 'smallest']}
      picture={({ seen, pictures }) => (
        <ColoursPicture
          seen={seen}
          pictures={pictures}
          view={view.value}
          chosen={chosen.ids}
          wash={wash.value}
          shapes={found}
          onPlace={(place) => {
            const family = familyAt(seen, place);
            if (family !== null) choose(family);
          }}
        />
      )}
      panel={({ seen }) => (
        <div class={styles.panel}>
          <ChoiceRow
            label="What the picture shows"
            choices={views}
            chosen={view.value}
            onChoose={(next) => {
              view.value = next;
            }}
          />
          {view.value === 'shapes' && (
            <>
              <ChoiceRow
                label="The wash whose shapes are shown"
                choices={washes}
                chosen={wash.value}
                onChoose={(next) => {
                  wash.value = next;
                }}
              />
              <p data-testid="shapes-shown">{found && shapesInWords(found.shapes.count)}</p>
            </>
          )}
          <FamilyActions
            seen={seen}
            chosen={chosen.ids}
            reading={reading}
            onEdit={(edit) => {
              chosen.clear();
              void studio.decide({ kind: 'families', edit });
            }}
          />
          <FamilyRows families={seen.reading.families} chosen={chosen.ids} onToggle={choose} />
          <Button
            look="quiet"
            disabled={!wishes.familyEdits || reading}
            onClick={() => {
              chosen.clear();
              void studio.decide({ kind: 'families', edit: null });
            }}
          >
            As the picture has them
          </Button>
          <ShapeSizes
            reading={seen.reading}
            moved={moved}
            own={wishes.smallest !== undefined}
            onMove={(of) => {
              wash.value = of;
              view.value = 'shapes';
            }}
            onUsual={() => void studio.decide({ kind: 'smallest', sizes: null })}
          />
        </div>
      )}
    />
  );
}
