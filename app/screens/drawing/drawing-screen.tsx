import { useComputed, useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { fileName, type OutlineChoice, outlineSvg } from '../../core/outline/outline-svg.ts';
import { type PrintTiles, printTiles } from '../../core/outline/print-tiles.ts';
import { bitmapLayer, type Layer, paledLayer } from '../../drawing/layers.ts';
import type { PictureCalls } from '../../state/painting/screen-calls.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { linkTo } from '../../state/router.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ScreenLayout, TopBar } from '../../ui/layout/screen-layout.tsx';
import { Waiting } from '../../ui/layout/waiting.tsx';
import { Picture } from '../../ui/picture/picture.tsx';
import { useOutline } from '../../ui/picture/use-outline.ts';
import { DrawingPages } from './drawing-pages.tsx';
import { DrawingPanel, DrawingPreview } from './drawing-panel.tsx';

/** How far the reference is paled under the drawing. */
const paled = 0.72;

interface DrawingScreenProps {
  studio: Studio;
  calls: PictureCalls;
  paintingId: string;
}

/** The drawing to carry over to the sheet: seen over the picture, saved as a file, printed at true size. */
export function DrawingScreen({ studio, calls, paintingId }: DrawingScreenProps) {
  const choice = useSignal<OutlineChoice>({ grid: true, soft: true, inner: true });
  const drawing = useOutline(studio, calls);
  const tiles = useMemo((): PrintTiles | null => drawing && printTiles(drawing), [drawing]);
  const layers = useComputed((): Record<string, Layer> => {
    const pictures = studio.pictures.value;
    return pictures ? { paled: paledLayer(bitmapLayer(pictures.reference), paled) } : {};
  });
  const seen = studio.seen.value;
  const title = studio.painting.value?.title || 'Painting';
  const save = (): void => {
    if (drawing)
      saveFile(fileName(title, 'drawing.svg'), 'image/svg+xml', outlineSvg(drawing, choice.value));
  };
  return (
    <>
      <ScreenLayout
        name="drawing"
        top={
          <TopBar
            title="Drawing to transfer"
            back="Wash plan"
            backTo={linkTo(paintingId, 'plan')}
          />
        }
        picture={
          drawing && seen ? (
            <Picture
              label="The drawing over your reference, paled"
              size={seen.reading.raster}
              layers={layers.value}
              show="paled"
              over={<DrawingPreview outline={drawing} choice={choice.value} />}
            />
          ) : (
            <Waiting studio={studio} />
          )
        }
        panel={
          drawing && tiles ? (
            <DrawingPanel
              outline={drawing}
              pages={tiles}
              choice={choice.value}
              onChoice={(next) => {
                choice.value = next;
              }}
            />
          ) : (
            <p>The drawing follows from the shapes of the picture.</p>
          )
        }
        actions={
          <>
            <Button large disabled={!drawing} onClick={save}>
              Save as a file
            </Button>
            <Button look="main" large disabled={!tiles} onClick={() => print()}>
              {tiles && tiles.tiles.length > 1 ? `Print ${tiles.tiles.length} pages` : 'Print'}
            </Button>
          </>
        }
      />
      {drawing && tiles && (
        <DrawingPages title={title} outline={drawing} choice={choice.value} pages={tiles} />
      )}
    </>
  );
}

/** Hands a text file to the browser's own 'save'; nothing leaves the device. */
function saveFile(name: string, type: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000); // some browsers read it a moment later
}
