import { useMemo } from 'preact/hooks';
import type { SubjectResult } from '../../../workers/analysis-api.ts';
import { bitmapLayer, whereLayer } from '../../drawing/layers.ts';
import { shrinkSlots } from '../../drawing/shrink-slots.ts';
import { valueOfLightness } from '../../model/munsell-value.ts';
import type { PixelSize } from '../../model/pixel-size.ts';
import { Picture } from '../common/picture.tsx';
import styles from './side-pictures.module.css';
import { dimTo } from './subject-layers.ts';

interface SidePicturesProps {
  found: SubjectResult;
  grey: ImageBitmap;
  size: PixelSize;
}

const longSidePx = 480;
const valueInWords = (lightness: number): string => valueOfLightness(lightness).toFixed(1);

/** The subject alone and the ground alone in grey, with the value of each. */
export function SidePictures({ found, grey, size }: SidePicturesProps) {
  const { mask, facts } = found;
  const sides = useMemo(() => {
    const small = shrinkSlots(mask, size.width, size.height, longSidePx);
    const alone = (side: 0 | 1) =>
      whereLayer(bitmapLayer(grey), small.slotMap, new Set([side]), dimTo);
    return { size: small, subject: alone(1), ground: alone(0) };
  }, [mask, grey, size.width, size.height]);
  return (
    <div class={styles.pair}>
      {(['subject', 'ground'] as const).map((side) => (
        <figure key={side}>
          <div class={styles.picture} style={{ aspectRatio: size.width / size.height }}>
            <Picture
              label={`The ${side} alone, in grey`}
              size={sides.size}
              layers={{ alone: sides[side] }}
              show="alone"
            />
          </div>
          <figcaption>
            {side === 'subject' ? 'Subject' : 'Ground'}, value{' '}
            {valueInWords(facts.meanLightness[side])}
          </figcaption>
        </figure>
      ))}
      <p class={styles.quiet}>Mean values; 0 is black, 10 is white.</p>
    </div>
  );
}
