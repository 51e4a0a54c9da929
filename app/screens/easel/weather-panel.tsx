import { useSignal } from '@preact/signals';
import { estimateDrying } from '../../core/drying/estimate-drying.ts';
import { usualWaterGrams } from '../../core/drying/water.ts';
import {
  airs,
  type Backing,
  chosenOf,
  coolTestWorks,
  figureOf,
  humidities,
  sunshine,
  type Weather,
  warmths,
} from '../../core/drying/weather.ts';
import { pacesOf } from '../../core/session/drying-clock.ts';
import {
  airInWords,
  backingWords,
  leaveIt,
  slowAir,
} from '../../core/words/drying/drying-words.ts';
import { minutesInWords } from '../../core/words/minutes.ts';
import { words as told } from '../../core/words/plan/words.ts';
import { typedNumber } from '../../core/words/typed-number.ts';
import { celsiusOf, fahrenheitOf } from '../../core/words/units.ts';
import type { Easel } from '../../state/session/easel.ts';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { PaperRows } from '../../ui/controls/paper-rows.tsx';
import { Fold } from './fold.tsx';
import styles from './more-panels.module.css';

const words = (choices: readonly (readonly [string, string, number])[]) =>
  choices.map(([name, text]) => [name, text] as const);

const backings = (Object.keys(backingWords) as Backing[]).map(
  (backing) => [backing, backingWords[backing]] as const,
);

const noYes = [
  ['no', 'No'],
  ['yes', 'Yes'],
] as const;

/** The air and the paper: set once, kept for next time, changed whenever they change. */
export function WeatherPanel({ easel }: { easel: Easel }) {
  const { weather, paper, lessons } = easel.session.value;
  const change = (changed: Partial<Weather>): void =>
    easel.setAir({ weather: { ...weather, ...changed }, paper });
  const flatWash = {
    waterGramsPerSquareMetre: usualWaterGrams.stroke,
    weather,
    paperGsm: paper.gsm,
  };
  const { shineMinutes, dryMinutes } = estimateDrying(
    flatWash,
    pacesOf({ lessons, paper, weather }, 'stroke'),
  );
  return (
    <Fold title="Air and paper">
      <p data-testid="air">
        {airInWords(weather)}. A flat wash loses its shine in {minutesInWords(shineMinutes)} and is
        bone dry in {minutesInWords(dryMinutes)}.
      </p>
      {!coolTestWorks(weather) && (
        <p role="status">{slowAir} Go by its colour, and give it time.</p>
      )}
      <h4>Warmth</h4>
      <ChoiceRow
        label="Warmth"
        choices={words(warmths)}
        chosen={chosenOf(warmths, weather.celsius)}
        onChoose={(chosen) => change({ celsius: figureOf(warmths, chosen) })}
      />
      <h4>Dampness of the air</h4>
      <ChoiceRow
        label="Dampness of the air"
        choices={words(humidities)}
        chosen={chosenOf(humidities, weather.humidity)}
        onChoose={(chosen) => change({ humidity: figureOf(humidities, chosen) })}
      />
      <h4>Moving air</h4>
      <ChoiceRow
        label="Moving air"
        choices={words(airs)}
        chosen={chosenOf(airs, weather.airSpeed)}
        onChoose={(chosen) => change({ airSpeed: figureOf(airs, chosen) })}
      />
      <p class="quiet">Outdoors in a sheltered place counts as a fan.</p>
      <h4>Sun on the sheet</h4>
      <ChoiceRow
        label="Sun on the sheet"
        choices={noYes}
        chosen={weather.sunWatts ? 'yes' : 'no'}
        onChoose={(chosen) => change({ sunWatts: chosen === 'yes' ? sunshine : 0 })}
      />
      <h4>The sheet lies</h4>
      <ChoiceRow
        label="The sheet lies"
        choices={backings}
        chosen={weather.backing ?? 'board'}
        onChoose={(backing) => change({ backing })}
      />
      <h4>Hair dryer</h4>
      <ChoiceRow
        label="Hair dryer"
        choices={noYes}
        chosen={weather.hairDryer ? 'yes' : 'no'}
        onChoose={(chosen) => change({ hairDryer: chosen === 'yes' })}
      />
      {weather.hairDryer && (
        <p class="quiet">
          {told([{ say: 'caution/dryer' }, { say: 'caution/dryer-socket' }])} Never on a mask. The
          clock reckons with the cool setting. {leaveIt}
        </p>
      )}
      <ExactAir weather={weather} onChange={change} />
      <PaperRows paper={paper} onChoose={(chosen) => easel.setAir({ weather, paper: chosen })} />
    </Fold>
  );
}

interface ExactAirProps {
  weather: Weather;
  onChange: (changed: Partial<Weather>) => void;
}

/** A figure shown, and kept, as she types it. */
const same = (figure: number): number => figure;
const asItIs = { shown: same, meant: same } as const;

const fields = [
  {
    name: 'celsius',
    label: 'Degrees Celsius',
    least: 1,
    most: 50,
    shown: (celsius: number) => Math.round(celsius * 10) / 10,
    meant: same,
  },
  {
    name: 'celsius',
    label: 'or Fahrenheit',
    least: 34,
    most: 122,
    shown: (celsius: number) => Math.round(fahrenheitOf(celsius)),
    meant: celsiusOf,
  },
  { name: 'humidity', label: 'Humidity, %', least: 20, most: 97, ...asItIs },
  { name: 'airSpeed', label: 'Air, metres a second', least: 0.05, most: 10, ...asItIs },
] as const;

/** The same in figures, for who has a thermometer and a hygrometer on the wall. */
function ExactAir({ weather, onChange }: ExactAirProps) {
  const problem = useSignal<string | null>(null);
  return (
    <details class={styles.exact}>
      <summary>Exact figures</summary>
      {fields.map(({ name, label, least, most, shown, meant }) => (
        <label key={label} class={styles.field}>
          {label}
          <input
            type="text"
            inputMode="decimal"
            value={String(shown(weather[name]))}
            onChange={({ currentTarget }) => {
              const typed = typedNumber(currentTarget.value);
              const fair = typed !== null && typed >= least && typed <= most;
              problem.value = fair
                ? null
                : `${label}: a figure from ${least} to ${most}. The old one stands.`;
              if (fair) onChange({ [name]: meant(typed) });
              else currentTarget.value = String(shown(weather[name]));
            }}
          />
        </label>
      ))}
      {problem.value && <p role="alert">{problem.value}</p>}
    </details>
  );
}
