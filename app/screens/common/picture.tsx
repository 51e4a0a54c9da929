import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Layer } from '../../drawing/layers.ts';
import type { PixelSize } from '../../model/reference.ts';
import { afterFrame, whenIdle } from './paint-later.ts';
import styles from './picture.module.css';

interface LayerCanvasProps {
  paint: Layer;
  size: PixelSize;
  shown: boolean;
  ahead: boolean;
}

/** One layer, painted when it is first needed and then only shown and hidden. */
function LayerCanvas({ paint, size, shown, ahead }: LayerCanvasProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const painted = useRef<Layer | null>(null);
  useLayoutEffect(() => {
    const element = canvas.current;
    if (!element || painted.current === paint || !(shown || ahead)) return;
    const draw = (): void => {
      if (painted.current === paint) return;
      element.width = size.width;
      element.height = size.height;
      const context = element.getContext('2d');
      if (!context) return;
      paint(context);
      painted.current = paint;
    };
    if (shown && !painted.current) {
      draw(); // nothing to show until then
      return;
    }
    // What was tapped shows first that it was; then comes the picture, then what is painted ahead of need.
    return shown ? afterFrame(draw) : whenIdle(draw);
  });
  return <canvas ref={canvas} class={styles.layer} hidden={!shown} />;
}

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
  /** Layers painted ahead so that the first tap is instant. */
  ahead?: readonly string[];
  /** A tap on the picture itself. */
  onTap?: () => void;
  tapLabel?: string;
  /** Seen the other way round, so that shapes are seen and not things. */
  turn?: PictureTurn;
  /** Lies over the picture and takes its touches. */
  over?: ComponentChildren;
}

export function Picture(props: PictureProps) {
  const { label, size, layers, show, ahead = [], onTap, tapLabel, turn, over } = props;
  const canvases = Object.entries(layers).map(([name, paint]) => (
    <LayerCanvas
      key={name}
      paint={paint}
      size={size}
      shown={name === show}
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
