import type { Signal } from '@preact/signals';
import { SliderRow } from '../common/slider-row.tsx';

const words = ['eyes open', 'half closed', 'nearly shut'] as const;

/** How far the eyes are closed. */
export function SquintStrength({ strength }: { strength: Signal<number> }) {
  const said = words[Math.min(2, Math.floor(strength.value * 3))] ?? words[0];
  return (
    <SliderRow
      label="Squint"
      said={said}
      min={0}
      max={100}
      step={5}
      value={Math.round(strength.value * 100)}
      onMove={(percent) => {
        strength.value = percent / 100;
      }}
      onSettle={() => undefined}
    />
  );
}
