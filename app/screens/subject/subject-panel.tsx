import type { Signal } from '@preact/signals';
import type { PixelSize } from '../../model/pixel-size.ts';
import type { SubjectMode } from '../../model/subject.ts';
import { subjectSentence } from '../../model/subject-sentence.ts';
import { ChoiceRow } from '../common/choice-row.tsx';
import { SliderRow } from '../common/slider-row.tsx';
import { SidePictures } from './side-pictures.tsx';
import styles from './subject-panel.module.css';
import type { SubjectLine } from './use-subject-line.ts';

interface SubjectPanelProps {
  line: SubjectLine;
  grey: ImageBitmap;
  size: PixelSize;
  mode: Signal<SubjectMode>;
  brush: Signal<number>;
  view: Signal<'colour' | 'grey'>;
  hintId: string;
}

function hintFor(mode: SubjectMode, hasSubject: boolean): string {
  if (mode === 'add') return 'Paint over what belongs to the subject.';
  if (mode === 'take') return 'Paint over what is ground.';
  return hasSubject
    ? 'Mend the line with Add and Take away, or draw a new one round it.'
    : 'Draw a loose line round the subject, a little outside of it.';
}

const keysFor = (mode: SubjectMode): string =>
  mode === 'circle'
    ? 'By keys: arrows move an oval, + and − size it, [ and ] make it narrower or wider, Enter lays it down.'
    : 'By keys: arrows move the brush, Enter dabs.';

function said({ found, empty, problem }: SubjectLine): string {
  if (problem) return problem;
  if (empty) return 'Nothing of this picture lies in your line. Draw round the subject again.';
  return found ? subjectSentence(found.facts) : '';
}

/** What is drawn with, how the subject stands, and both sides in grey. */
export function SubjectPanel(props: SubjectPanelProps) {
  const { line, grey, size, mode, brush, view, hintId } = props;
  const { found, looking } = line;
  return (
    <div class={styles.panel}>
      {found && (
        <ChoiceRow
          label="What you draw with"
          choices={[
            ['circle', 'Circle'],
            ['add', 'Add'],
            ['take', 'Take away'],
          ]}
          chosen={mode.value}
          onChoose={(next) => {
            mode.value = next;
          }}
        />
      )}
      {mode.value !== 'circle' && (
        <SliderRow
          label="Brush"
          said={brush.value < 0.03 ? 'small' : brush.value < 0.08 ? 'middling' : 'large'}
          min={0.01}
          max={0.15}
          step={0.005}
          value={brush.value}
          onMove={(value) => {
            brush.value = value;
          }}
          onSettle={() => {}}
        />
      )}
      <p id={hintId} class={found ? styles.quiet : styles.first}>
        {hintFor(mode.value, found !== null)}
        <span class={styles.keys}> {keysFor(mode.value)}</span>
      </p>
      <p class={styles.sentence} role="status" data-testid="subject-sentence">
        {said(line) || (looking ? 'Getting the picture ready …' : '')}
      </p>
      {found && (
        <>
          <SidePictures found={found} grey={grey} size={size} />
          <ChoiceRow
            label="What the picture shows"
            choices={[
              ['colour', 'Colour'],
              ['grey', 'Grey'],
            ]}
            chosen={view.value}
            onChoose={(next) => {
              view.value = next;
            }}
          />
        </>
      )}
    </div>
  );
}
