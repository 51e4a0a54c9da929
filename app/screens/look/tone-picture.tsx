import { useLayoutEffect, useRef } from 'preact/hooks';
import { lightnessLayer } from '../../drawing/light-layers.ts';
import type { ToneRange } from '../../model/reading.ts';
import { onTheSheet } from '../../model/tone-range.ts';
import styles from './range-pictures.module.css';

interface TonePictureProps {
  /** Simplified lightness, L* x 2.55 a pixel, of that size. */
  lightnessMap: Uint8Array;
  width: number;
  height: number;
  range: ToneRange;
}

/** The picture in grey as the sheet can have it. */
export function TonePicture({ lightnessMap, width, height, range }: TonePictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { lo, hi, dark, paper, mode } = range;
  useLayoutEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context) lightnessLayer(lightnessMap, (lightness) => onTheSheet(range, lightness))(context);
  }, [lightnessMap, lo, hi, dark, paper, mode]);
  return <canvas ref={canvas} class={styles.picture} width={width} height={height} />;
}
