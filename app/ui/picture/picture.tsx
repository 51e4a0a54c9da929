import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { PixelSize } from '../../core/raster/size.ts';
import type { Layer } from '../../drawing/layers.ts';
import styles from './picture.module.css';

export interface PictureTurn {
  readonly upsideDown: boolean;
  readonly mirrored: boolean;
}

interface PictureProps {
  /** What is to be seen, in words, for a screen reader. */
  label: string;
  size: PixelSize;
  layers: Readonly<Record<string, Layer>>;
  show: string;
  /** Other layers painted before they are asked for. */
  ahead?: readonly string[];
  /** A tap on the picture itself. */
  onTap?: () => void;
  /** The layer such a tap shows: ready before it, so that it stands in the next frame. */
  tapShows?: string;
  tapLabel?: string;
  /** Seen the other way round, so that shapes are seen and not things. */
  turn?: PictureTurn;
  /** Lies over the picture and takes its touches. */
  over?: ComponentChildren;
}

export function Picture(props: PictureProps) {
  const { label, size, layers, show, ahead = [], onTap, tapShows, tapLabel, turn, over } = props;
  const canvases = Object.entries(layers).map(([name, paint]) => (
    <LayerCanvas
      key={name}
      paint={paint}
      size={size}
      shown={name === show}
      next={name === tapShows}
      ahead={ahead.includes(name)}
    />
  ));
  const shape = {
    '--ratio': size.width / size.height,
    '--flip-x': turn && turn.mirrored !== turn.upsideDown ? -1 : 1,
    '--flip-y': turn?.upsideDown ? -1 : 1,
  };
  return (
    <div class={styles.frame}>
      {onTap ? (
        <button
          type="button"
          class={styles.picture}
          style={shape}
          data-show={show}
          data-testid="picture"
          inert={Boolean(over)}
          aria-label={tapLabel ? `${label}. ${tapLabel}` : label}
          onClick={onTap}
        >
          {canvases}
        </button>
      ) : (
        <div class={styles.picture} style={shape} data-show={show} role="img" aria-label={label}>
          {canvases}
        </div>
      )}
      {over && (
        <div class={styles.picture} style={shape}>
          {over}
        </div>
      )}
    </div>
  );
}

interface LayerCanvasProps {
  paint: Layer;
  size: PixelSize;
  shown: boolean;
  /** The next tap shows it: it lies over the picture unseen, so that the tap has only to let it be seen. */
  next: boolean;
  ahead: boolean;
}

/**
 * Painted beside the page and handed over whole: a canvas with a 2d context paints only when it is first
 * seen, and without a graphics processor it is copied anew for every frame.
 */
function paintOnto(canvas: HTMLCanvasElement, { width, height }: PixelSize, paint: Layer): boolean {
  const away = new OffscreenCanvas(width, height);
  const context = away.getContext('2d');
  const shown = canvas.getContext('bitmaprenderer');
  if (!context || !shown) return false;
  paint(context);
  if (canvas.width !== width) canvas.width = width;
  if (canvas.height !== height) canvas.height = height;
  shown.transferFromImageBitmap(away.transferToImageBitmap());
  return true;
}

/** One layer, painted when it is first needed and then only shown and hidden. */
function LayerCanvas({ paint, size, shown, next, ahead }: LayerCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const painted = useRef<Layer | null>(null);
  useLayoutEffect(() => {
    const element = canvas.current;
    if (!element || painted.current === paint || !(shown || next || ahead)) return;
    const draw = (): void => {
      if (painted.current !== paint && paintOnto(element, size, paint)) painted.current = paint;
    };
    if (shown && !painted.current) {
      draw(); // nothing to show until then
      return;
    }
    // What was tapped shows first that it was; then comes the picture, then what is painted ahead of need.
    return shown ? afterFrame(draw) : whenIdle(draw);
  });
  const place = next ? `${styles.layer} ${styles.next}` : styles.layer;
  return <canvas ref={canvas} class={place} hidden={!shown} />;
}

/** Does it once the next frame has been shown; the answer calls it off. */
function afterFrame(work: () => void): () => void {
  let later: ReturnType<typeof setTimeout> | undefined;
  const frame = requestAnimationFrame(() => {
    later = setTimeout(work);
  });
  return () => {
    cancelAnimationFrame(frame);
    clearTimeout(later);
  };
}

/** Longest wait for a quiet moment, ms. */
const longestMs = 400;

/** Does it when nothing else is to be done, soon in any case; the answer calls it off. */
function whenIdle(work: () => void): () => void {
  // Not in every browser.
  if (typeof requestIdleCallback === 'undefined') {
    const later = setTimeout(work, longestMs / 2);
    return () => clearTimeout(later);
  }
  const later = requestIdleCallback(work, { timeout: longestMs });
  return () => cancelIdleCallback(later);
}
