import { useMemo } from 'preact/hooks';
import { shrinkSlots } from '../../drawing/shrink-slots.ts';
import type { RangeMode, Reading } from '../../model/reading.ts';
import { rangeIn } from '../../model/tone-range.ts';
import styles from './range-pictures.module.css';
import { TonePicture } from './tone-picture.tsx';

const choices: readonly (readonly [RangeMode, string])[] = [
  ['photographed', 'As photographed'],
  ['opened', 'Opened up'],
];

interface RangePicturesProps {
  reading: Reading;
  lightnessMap: Uint8Array;
  onChoose: (mode: RangeMode) => void;
}

/** The sheet in grey as it would become, both ways side by side; a tap takes one. */
export function RangePictures({ reading, lightnessMap, onChoose }: RangePicturesProps) {
  const { width, height } = reading.raster;
  const small = useMemo(
    () => shrinkSlots(lightnessMap, width, height, 360),
    [lightnessMap, width, height],
  );
  return (
    <fieldset class={styles.row}>
      <legend class="spoken">How dark and light the sheet becomes</legend>
      {choices.map(([mode, name]) => (
        <button
          key={mode}
          type="button"
          class={styles.choice}
          aria-pressed={mode === reading.range.mode}
          onClick={() => onChoose(mode)}
        >
          <TonePicture
            lightnessMap={small.slotMap}
            width={small.width}
            height={small.height}
            range={rangeIn(mode, reading.range)}
          />
          {name}
        </button>
      ))}
    </fieldset>
  );
}
