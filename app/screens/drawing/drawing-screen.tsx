import { useComputed, useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { bitmapLayer, type Layer } from '../../drawing/layers.ts';
import type { OutlineChoice } from '../../drawing/outline-paths.ts';
import { outlineSvg } from '../../drawing/outline-svg.ts';
import { paledLayer } from '../../drawing/paled-layer.ts';
import { fileName } from '../../model/file-name.ts';
import { type PrintTiles, printTiles } from '../../model/print-tiles.ts';
import type { PictureCalls } from '../../state/picture-calls.ts';
import { linkTo } from '../../state/route.ts';
import type { Studio } from '../../state/studio.ts';
import { Button } from '../common/button.tsx';
import { Picture } from '../common/picture.tsx';
import { TopBar } from '../common/top-bar.tsx';
import { Waiting } from '../common/waiting.tsx';
import { Workplace } from '../common/workplace.tsx';
import { DrawingPages } from './drawing-pages.tsx';
import { DrawingPanel } from './drawing-panel.tsx';
import { DrawingPreview } from './drawing-preview.tsx';
import { saveFile } from './save-file.ts';
import { useOutline } from './use-outline.ts';

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
      <Workplace
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
