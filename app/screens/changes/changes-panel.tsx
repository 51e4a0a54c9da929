import type { Signal } from '@preact/signals';
import type { Change } from '../../model/alteration.ts';
import type { Painting } from '../../model/painting.ts';
import type { Studio } from '../../state/studio.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import { SliderRow } from '../common/slider-row.tsx';
import type { AlterDecision } from './change-drawing.tsx';
import { ChangeList } from './change-list.tsx';
import { hintFor, keysFor, toDo } from './change-words.ts';
import styles from './changes-panel.module.css';
import { GroundChoice } from './ground-choice.tsx';

export type ChangesView = 'colour' | 'grey' | 'values';

/** What is in her hand, and what she looks at. */
export interface ChangeTools {
  readonly change: Signal<Change>;
  readonly hand: Signal<'round' | 'brush'>;
  /** Diameter of the brush as a share of the picture's long side. */
  readonly brush: Signal<number>;
  readonly view: Signal<ChangesView>;
  readonly pointed: Signal<string | null>;
}

interface ChangesPanelProps {
  studio: Studio;
  painting: Painting;
  changes: readonly AlterDecision[];
  tools: ChangeTools;
  hintId: string;
}

/** What is changed, with what, what was changed, and the ground. */
export function ChangesPanel({ studio, painting, changes, tools, hintId }: ChangesPanelProps) {
  const { change, hand, brush, view, pointed } = tools;
  const isBrush = hand.value === 'brush';
  return (
    <div class={styles.panel}>
      <ChoiceRow
        label="How it is painted otherwise"
        choices={toDo}
        chosen={change.value}
        onChoose={(next) => {
          change.value = next;
        }}
      />
      <ChoiceRow
        label="What you draw with"
        choices={[
          ['round', 'Draw round'],
          ['brush', 'Brush'],
        ]}
        chosen={hand.value}
        onChoose={(next) => {
          hand.value = next;
        }}
      />
      {isBrush && (
        <SliderRow
          label="Brush"
          said={brush.value < 0.04 ? 'small' : brush.value < 0.1 ? 'middling' : 'large'}
          min={0.01}
          max={0.2}
          step={0.005}
          value={brush.value}
          onMove={(value) => {
            brush.value = value;
          }}
          onSettle={() => {}}
        />
      )}
      <p id={hintId} class={changes.length > 0 ? styles.quiet : undefined}>
        {hintFor(change.value, isBrush)}
        <span class={styles.keys}> {keysFor(isBrush)}</span>
      </p>
      <ChangeList
        changes={changes}
        pointed={pointed}
        onTakeBack={(id) => void studio.decide({ kind: 'undo', undoes: id })}
      />
      <GroundChoice studio={studio} painting={painting} />
      <ChoiceRow
        label="What the picture shows"
        choices={[
          ['colour', 'Colour'],
          ['grey', 'Grey'],
          ['values', 'Values'],
        ]}
        chosen={view.value}
        onChoose={(next) => {
          view.value = next;
        }}
      />
      <p class={styles.quiet}>The photo itself stays as it is.</p>
    </div>
  );
}
