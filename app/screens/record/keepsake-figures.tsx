import type { ComponentChildren } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { PixelSize } from '../../core/raster/size.ts';
import { bitmapLayer, type Layer, sheetLayer } from '../../drawing/layers.ts';
import type { PictureCalls } from '../../state/painting/screen-calls.ts';
import type { Desk } from '../../state/session/desk.ts';
import { sheetMapOf } from '../../ui/picture/step-layers.ts';
import { useSoft } from '../../ui/picture/use-soft.ts';
import styles from './keepsake-figures.module.css';

/** The photo and the sheet as planned, as they hang beside her painting. */
export interface RecordPictures {
  readonly size: PixelSize;
  readonly photo: Layer;
  /** Null where the plan has no step. */
  readonly planned: Layer | null;
}

/** Both from what lies on the desk; the sheet with its soft edges, once they are worked out. */
export function useRecordPictures(desk: Desk, calls: PictureCalls): RecordPictures {
  const { seen, plan, edges } = desk;
  const size = seen.reading.raster;
  const picture = useMemo(() => ({ slotMap: seen.slotMap, size, edges }), [seen, edges]);
  const soft = useSoft(calls, picture);
  return useMemo(() => {
    const last = plan.steps.at(-1);
    return {
      size,
      photo: bitmapLayer(seen.reference),
      planned: last ? sheetLayer(sheetMapOf(seen, soft), last) : null,
    };
  }, [seen, plan, soft]);
}

interface FiguresProps {
  pictures: RecordPictures;
  /** Address of her photo of the painting; null where there is none. */
  painting: string | null;
  /** What stands in place of a painting that is not there. */
  missing?: ComponentChildren;
}

/** The photo, the sheet as planned and her painting, side by side and of one size. */
export function KeepsakeFigures({ pictures, painting, missing }: FiguresProps) {
  const { size, photo, planned } = pictures;
  return (
    <div
      class={styles.figures}
      style={{ '--ratio': size.width / size.height }}
      data-painted={painting ? true : undefined}
    >
      <LayerFigure words="The photo" size={size} layer={photo} />
      {planned && <LayerFigure words="As planned" size={size} layer={planned} />}
      {(painting || missing) && (
        <figure class={styles.painting}>
          {painting ? (
            <img class={styles.picture} src={painting} alt="The painting" decoding="async" />
          ) : (
            <div class={styles.missing}>{missing}</div>
          )}
          {painting && <figcaption>The painting</figcaption>}
        </figure>
      )}
    </div>
  );
}

interface LayerFigureProps {
  words: string;
  size: PixelSize;
  layer: Layer;
}

function LayerFigure({ words, size, layer }: LayerFigureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context) layer(context);
  }, [layer, size]);
  return (
    <figure>
      <canvas
        ref={canvas}
        class={styles.picture}
        width={size.width}
        height={size.height}
        role="img"
        aria-label={words}
      />
      <figcaption>{words}</figcaption>
    </figure>
  );
}
