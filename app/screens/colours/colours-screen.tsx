import { useSignal } from '@preact/signals';
import type { Point } from '../../core/colour/lab.ts';
import { readingWishes } from '../../core/decisions/wishes.ts';
import { familiesAsPainted } from '../../core/reading/families/paint-order.ts';
import { type MassWash, smallestSizes } from '../../core/reading/masses.ts';
import { shapesInWords } from '../../core/words/reading/masses.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { DecisionScreen } from '../../ui/layout/decision-screen.tsx';
import { ColoursPicture, type ColourView, useWashShapes } from './colours-picture.tsx';
import { FamilyActions, FamilyRows } from './family-rows.tsx';
import { ShapeSizes, useMovedSizes } from './shape-sizes.tsx';

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
    <DecisionScreen
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
        <div class="stack">
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
          <FamilyRows
            families={familiesAsPainted(seen.reading)}
            chosen={chosen.ids}
            onToggle={choose}
          />
          <Button
            look="quiet"
            disabled={!wishes.familyEdits || reading}
            onClick={() => {
              chosen.clear();
              void studio.decide({ kind: 'families', edit: null });
            }}
          >
            Reset
          </Button>
          <ShapeSizes
            reading={seen.reading}
            moved={moved}
            own={wishes.smallest !== undefined}
            onMove={(movedWash) => {
              wash.value = movedWash;
              view.value = 'shapes';
            }}
            onUsual={() => void studio.decide({ kind: 'smallest', sizes: null })}
          />
        </div>
      )}
    />
  );
}

/** More than two can't be joined at once: a third takes the place of the first. */
const most = 2;

interface ChosenFamilies {
  /** Ids of families of what is seen now. */
  readonly ids: readonly number[];
  toggle(id: number): void;
  clear(): void;
}

/** The families she has chosen. Their numbers hold for one reading only: a new one starts afresh. */
function useChosenFamilies(seen: OpenedReading | null): ChosenFamilies {
  const chosen = useSignal<{
    readonly seen: OpenedReading | null;
    readonly ids: readonly number[];
  }>({
    seen: null,
    ids: [],
  });
  const listChosen = (): readonly number[] => (chosen.value.seen === seen ? chosen.value.ids : []);
  const take = (ids: readonly number[]): void => {
    chosen.value = { seen, ids };
  };
  return {
    ids: listChosen(),
    toggle: (id) => {
      const ids = listChosen(); // as it is when touched: two touches may come before the next drawing
      take(ids.includes(id) ? ids.filter((other) => other !== id) : [...ids, id].slice(-most));
    },
    clear: () => take([]),
  };
}

/** The colour family at a place, 0..1 of the picture's sides; null outside of the reading. */
function familyAt({ reading, slotMap }: OpenedReading, [x, y]: Point): number | null {
  const { width, height } = reading.raster;
  const column = Math.min(width - 1, Math.floor(x * width));
  const row = Math.min(height - 1, Math.floor(y * height));
  const slot = slotMap[row * width + column];
  return slot === undefined ? null : (reading.slots[slot]?.family ?? null);
}
