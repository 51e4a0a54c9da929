import {
  airInWords,
  airs,
  backingWords,
  chosenOf,
  figureOf,
  humidities,
  sunshine,
  warmths,
} from '../../model/drying/air-choices.ts';
import { leaveIt, slowAir } from '../../model/drying/bone-dry-sign.ts';
import { coolTestWorks } from '../../model/drying/cool-test.ts';
import { estimateDrying } from '../../model/drying/estimate-drying.ts';
import { waterOf } from '../../model/drying/water-of.ts';
import type { Backing, Weather } from '../../model/drying/weather.ts';
import { minutesInWords } from '../../model/minutes-in-words.ts';
import { pacesOf } from '../../model/session/reckon-drying.ts';
import type { Easel } from '../../state/easel.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import { PaperRows } from '../common/paper-rows.tsx';
import { ExactAir } from './exact-air.tsx';
import { Fold } from './fold.tsx';
import styles from './more-panel.module.css';

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
  const flatWash = { waterGramsPerSquareMetre: waterOf.stroke, weather, paperGsm: paper.gsm };
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
      <p class={styles.quiet}>Outdoors in a sheltered place counts as a fan.</p>
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
        <p class={styles.quiet}>
          Only once the shine has gone, low and cool, away from the water jar; never on a mask. Let
          the sheet cool two or three minutes before you feel it. {leaveIt}
        </p>
      )}
      <ExactAir weather={weather} onChange={change} />
      <PaperRows paper={paper} onChoose={(chosen) => easel.setAir({ weather, paper: chosen })} />
    </Fold>
  );
}
