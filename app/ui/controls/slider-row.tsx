import { useId } from 'preact/hooks';
import styles from './slider-row.module.css';

interface SliderRowProps {
  label: string;
  /** The value in words, beside the label. */
  said: string;
  min: number;
  max: number;
  step: number;
  value: number;
  onMove: (value: number) => void;
  /** The slider was let go. */
  onSettle: () => void;
}

/** A slider with its name and its value in words above it. */
export function SliderRow({
  label,
  said,
  min,
  max,
  step,
  value,
  onMove,
  onSettle,
}: SliderRowProps) {
  const id = useId();
  return (
    <div class={styles.row}>
      <label for={id}>{label}</label>
      <output for={id} class={styles.said}>
        {said}
      </output>
      <input
        id={id}
        class={styles.slider}
        type="range"
        min={min}
        max={max}
        step={step}
        value={value}
        disabled={min >= max}
        aria-valuetext={said}
        onInput={(event) => onMove(event.currentTarget.valueAsNumber)}
        onChange={onSettle}
      />
    </div>
  );
}
