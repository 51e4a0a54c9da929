import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { lastTakenBack } from '../../core/session/session-event.ts';
import { actWords } from '../../core/words/session/acts.ts';
import { noSound } from '../../core/words/session/reach-words.ts';
import { linkTo } from '../../state/router.ts';
import type { Easel } from '../../state/session/easel.ts';
import type { EaselSenses } from '../../state/session/easel-senses.ts';
import type { Keepsakes } from '../../state/session/keepsakes.ts';
import type { QuickLookCalls } from '../../state/session/quick-look.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import styles from './more-panels.module.css';
import { PacePanel, PractisePanel } from './practise-panel.tsx';
import { QuickLookPanel } from './quick-look-panel.tsx';
import { MixPanel, NotePanel, PhotoPanel } from './record-panels.tsx';
import { TroublePanel } from './trouble-panel.tsx';
import type { EaselViewState } from './use-easel-view.ts';
import { WeatherPanel } from './weather-panel.tsx';

interface MorePanelsProps {
  easel: Easel;
  senses: EaselSenses;
  keepsakes: Keepsakes;
  calls: QuickLookCalls;
  view: EaselViewState;
}

/** All that stands in the sheet of further actions, what is needed soonest first. */
export function MorePanels({ easel, senses, keepsakes, calls, view }: MorePanelsProps) {
  const { sessionId, seen, paintingId } = easel.desk.value ?? {};
  const step = easel.step.value;
  return (
    <>
      <TakeBackPanel easel={easel} />
      {paintingId !== undefined && (
        <a class={buttonClass('plain', true, true)} href={linkTo(paintingId, 'compare')}>
          Your sheet beside the plan
        </a>
      )}
      <div>
        {seen && step && <QuickLookPanel {...{ calls, step, view }} size={seen.reading.raster} />}
        {easel.running.value && (
          <>
            <TroublePanel easel={easel} />
            <PractisePanel easel={easel} />
            <WeatherPanel easel={easel} />
            <PacePanel easel={easel} />
            <MixPanel easel={easel} />
          </>
        )}
        {sessionId !== undefined && (
          <>
            <PhotoPanel easel={easel} keepsakes={keepsakes} sessionId={sessionId} />
            <NotePanel easel={easel} keepsakes={keepsakes} sessionId={sessionId} />
          </>
        )}
      </div>
      <SensesPanel senses={senses} />
    </>
  );
}

interface MoreSheetProps {
  onClose: () => void;
  children: ComponentChildren;
}

/** Further actions over the easel; the clock goes on behind it. */
export function MoreSheet({ onClose, children }: MoreSheetProps) {
  const sheet = useRef<HTMLDialogElement>(null);
  useEffect(() => sheet.current?.showModal(), []);
  return (
    <dialog ref={sheet} class={styles.sheet} aria-labelledby="more-title" onClose={onClose}>
      <header class={styles.top}>
        <h2 id="more-title">More</h2>
        <Button large onClick={() => sheet.current?.close()}>
          Close
        </Button>
      </header>
      <div class={styles.rows}>{children}</div>
    </dialog>
  );
}

/** The last tap undone, whatever it was; once more for the one before it; and done again. */
function TakeBackPanel({ easel }: { easel: Easel }) {
  const act = easel.lastAct.value;
  const undone = lastTakenBack(easel.log.value);
  return (
    <div class={styles.undo}>
      <Button large wide disabled={!act} onClick={easel.takeBack}>
        {act ? `Take back ‘${actWords[act.act]}’` : 'Nothing to take back'}
      </Button>
      {undone && (
        <Button
          large
          wide
          onClick={() => easel.tell({ kind: 'taken-back', events: undone.events })}
        >
          Redo ‘{actWords[undone.act]}’
        </Button>
      )}
    </div>
  );
}

const offOn = [
  ['off', 'Off'],
  ['on', 'On'],
] as const;
const hands = [
  ['left', 'Left'],
  ['right', 'Right'],
] as const;

/** Sound, speech, the side of the picture, and keys. */
function SensesPanel({ senses }: { senses: EaselSenses }) {
  const { sound, voice, hand, letterKeys } = senses.settings.value;
  return (
    <section class={styles.sensesPanelPanel} aria-label="Sound, speech, hand and keys">
      <h3>Sound</h3>
      {senses.sound.value === 'missing' ? (
        <p>{noSound}</p>
      ) : (
        <>
          <ChoiceRow
            label="Sound"
            choices={offOn}
            chosen={sound ? 'on' : 'off'}
            onChoose={(chosen) => senses.change({ sound: chosen === 'on' })}
          />
          <p class="quiet">
            Tones as the shine goes and at the end of a wait, louder when you are late, as long as
            the easel stays open on the screen. Nothing heard? Look at the silent switch and the
            volume.
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
        <p class="quiet">
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
      <p class="quiet">With the device on its side, the picture stands on the other side.</p>
      <h3>Keys</h3>
      <p class="quiet">
        A pedal or keyboard: page down, right, space or Enter go on; page up and left go back.
      </p>
      <p aria-hidden="true">Letters and digits</p>
      <ChoiceRow
        label="Letters and digits"
        choices={offOn}
        chosen={letterKeys ? 'on' : 'off'}
        onChoose={(chosen) => senses.change({ letterKeys: chosen === 'on' })}
      />
      <p class="quiet">
        g grey, p pause, w still wet, s shine gone, d wash is on, u take back; 1 to 5 the pictures.
      </p>
    </section>
  );
}
