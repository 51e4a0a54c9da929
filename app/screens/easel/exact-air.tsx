import { useSignal } from '@preact/signals';
import type { Weather } from '../../model/drying/weather.ts';
import { typedNumber } from '../../model/typed-number.ts';
import styles from './more-panel.module.css';

interface ExactAirProps {
  weather: Weather;
  onChange: (changed: Partial<Weather>) => void;
}

const fields = [
  { name: 'celsius', label: 'Degrees Celsius', least: 1, most: 50 },
  { name: 'humidity', label: 'Humidity, %', least: 20, most: 97 },
  { name: 'airSpeed', label: 'Air, metres a second', least: 0.05, most: 10 },
] as const;

/** The same in figures, for who has a thermometer and a hygrometer on the wall. */
export function ExactAir({ weather, onChange }: ExactAirProps) {
  const problem = useSignal<string | null>(null);
  return (
    <details class={styles.exact}>
      <summary>Exact figures</summary>
      {fields.map(({ name, label, least, most }) => (
        <label key={name} class={styles.field}>
          {label}
          <input
            type="text"
            inputMode="decimal"
            value={String(weather[name])}
            onChange={({ currentTarget }) => {
              const typed = typedNumber(currentTarget.value);
              const fair = typed !== null && typed >= least && typed <= most;
              problem.value = fair
                ? null
                : `${label}: a figure from ${least} to ${most}. The old one stands.`;
              if (fair) onChange({ [name]: typed });
              else currentTarget.value = String(weather[name]);
            }}
          />
        </label>
      ))}
      {problem.value && <p role="alert">{problem.value}</p>}
    </details>
  );
}
