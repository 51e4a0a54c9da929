import type { ComponentChildren } from 'preact';
import type { Layer } from '../../drawing/layers.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import { LayerCanvas } from './layer-canvas.tsx';
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
