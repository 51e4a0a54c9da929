import type { EaselSenses } from '../../state/easel-senses.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import styles from './senses-panel.module.css';

const offOn = [
  ['off', 'Off'],
  ['on', 'On'],
] as const;
const hands = [
  ['left', 'Left'],
  ['right', 'Right'],
] as const;

/** Sound, speech, the side of the picture, and keys. */
export function SensesPanel({ senses }: { senses: EaselSenses }) {
  const { sound, voice, hand, letterKeys } = senses.settings.value;
  return (
    <section class={styles.panel} aria-label="Sound, speech, hand and keys">
      <h3>Sound</h3>
      {senses.sound.value === 'missing' ? (
        <p>This browser makes no sound: the clock calls by turning dark.</p>
      ) : (
        <>
          <ChoiceRow
            label="Sound"
            choices={offOn}
            chosen={sound ? 'on' : 'off'}
            onChoose={(chosen) => senses.change({ sound: chosen === 'on' })}
          />
          <p class={styles.words}>
            Tones in the shine and at the end of a wait, louder when you are late. Only while the
            easel stays open on this screen. Nothing heard? The silent switch or the volume.
          </p>
        </>
      )}
      <h3>Speech</h3>
      {senses.canSpeak.value ? (
        <ChoiceRow
          label="Speech"
          choices={offOn}
          chosen={voice ? 'on' : 'off'}
          onChoose={(chosen) => senses.change({ voice: chosen === 'on' })}
        />
      ) : (
        <p class={styles.words}>
          This device has no English voice of its own to read the steps aloud. One can be added in
          the device's settings.
        </p>
      )}
      <h3>Hand you paint with</h3>
      <ChoiceRow
        label="Hand you paint with"
        choices={hands}
        chosen={hand}
        onChoose={(chosen) => senses.change({ hand: chosen })}
      />
      <p class={styles.words}>With the device on its side, the picture stands on the other side.</p>
      <h3>Keys</h3>
      <p class={styles.words}>
        A pedal or keyboard: page down, right, space or Enter go on; page up and left go back.
      </p>
      <ChoiceRow
        label="Letters and digits"
        choices={offOn}
        chosen={letterKeys ? 'on' : 'off'}
        onChoose={(chosen) => senses.change({ letterKeys: chosen === 'on' })}
      />
      <p class={styles.words}>
        g grey, p pause, w still wet, s shine gone, d stroke is down, u take back; 1 to 5 the
        pictures. Off: they do nothing.
      </p>
    </section>
  );
}
