import type { Signal } from '@preact/signals';
import { useRef } from 'preact/hooks';
import type { Painting } from '../../core/decisions/painting.ts';
import { lastDecision } from '../../core/decisions/standing-decisions.ts';
import { subjectDecisions } from '../../core/decisions/subject-strokes.ts';
import type { Change } from '../../core/reference/photo-stroke.ts';
import { keyHints } from '../../core/words/notices.ts';
import type { Studio } from '../../state/painting/studio.ts';
import { linkTo } from '../../state/router.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { SliderRow } from '../../ui/controls/slider-row.tsx';
import type { AlterDecision } from './change-drawing.tsx';
import styles from './changes-panel.module.css';

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
    <div class="stack">
      <ChoiceRow
        label="How it is painted otherwise"
        choices={changeChoices}
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
          said={brush.value < 0.04 ? 'small' : brush.value < 0.1 ? 'medium' : 'large'}
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
      <p id={hintId} class={changes.length > 0 ? 'quiet' : undefined}>
        {hintFor(change.value, isBrush)}
        <span class="quiet keys"> {keysHint(isBrush)}</span>
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
      <p class="quiet">The photo itself stays as it is.</p>
    </div>
  );
}

interface ChangeListProps {
  changes: readonly AlterDecision[];
  /** The one shown in the picture. */
  pointed: Signal<string | null>;
  onTakeBack: (id: string) => void;
}

/** What she changed, each to be seen in the picture and taken back by itself. */
function ChangeList({ changes, pointed, onTakeBack }: ChangeListProps) {
  const list = useRef<HTMLOListElement>(null);
  if (changes.length === 0) return <p class="quiet">Nothing is changed yet.</p>;
  const point = (id: string): void => {
    pointed.value = id;
  };
  return (
    <ol ref={list} class={styles.list} tabIndex={-1} aria-label="What you changed">
      {changes.map(({ id, change }, i) => (
        <li
          key={id}
          class={styles.row}
          onBlurCapture={() => {
            pointed.value = null;
          }}
        >
          <button
            type="button"
            class={styles.name}
            aria-pressed={pointed.value === id}
            onFocus={() => point(id)}
            onClick={() => point(id)}
          >
            {i + 1} {changeResults[change]}
          </button>
          <Button
            look="quiet"
            aria-label={`Take back ${i + 1}, ${changeResults[change]}`}
            onFocus={() => point(id)}
            onClick={() => {
              pointed.value = null;
              list.current?.focus({ preventScroll: true }); // this row goes away
              onTakeBack(id);
            }}
          >
            Take back
          </Button>
        </li>
      ))}
    </ol>
  );
}

/** Whether the ground of the subject becomes one plain wash; without a subject, the way to one. */
function GroundChoice({ studio, painting }: { studio: Studio; painting: Painting }) {
  const { decisions } = painting;
  if (subjectDecisions(decisions).length === 0)
    return (
      <p class={styles.ground}>
        Once you have drawn round the subject, all the rest can become one plain wash.
        <a class={buttonClass()} href={linkTo(painting.id, 'subject')}>
          Draw round the subject
        </a>
      </p>
    );
  const plain = lastDecision(decisions, 'ground')?.plain ?? false;
  return (
    <div class={styles.ground}>
      <Button
        aria-pressed={plain}
        onClick={() => void studio.decide({ kind: 'ground', plain: !plain })}
      >
        The ground as one plain wash
      </Button>
      {plain && (
        <p class="quiet">
          Values, edges and washes follow. In colour and grey the picture keeps its own ground, so
          that the subject’s line is always found in it.
        </p>
      )}
    </div>
  );
}

/** What she does, on the buttons. */
const changeChoices: readonly (readonly [Change, string])[] = [
  ['leave-out', 'Leave out'],
  ['lighter', 'One value lighter'],
  ['darker', 'One value darker'],
];

/** What was done, in the list. */
const changeResults: Readonly<Record<Change, string>> = {
  'leave-out': 'Left out',
  lighter: 'One value lighter',
  darker: 'One value darker',
};

const goal: Readonly<Record<Change, string>> = {
  'leave-out': 'what is to go: the surroundings are carried across',
  lighter: 'what is to be one value lighter',
  darker: 'what is to be one value darker',
};

export const hintFor = (change: Change, isBrush: boolean): string =>
  `${isBrush ? 'Paint over' : 'Draw a line round'} ${goal[change]}.`;

const keysHint = (isBrush: boolean): string => (isBrush ? keyHints.brush : keyHints.oval);
