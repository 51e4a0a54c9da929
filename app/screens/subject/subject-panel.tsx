import type { Signal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import type { Pictures, SubjectResult } from '../../../workers/api.ts';
import { shrinkSlots } from '../../core/raster/paint-slots.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import type { SubjectMode } from '../../core/reading/subject/subject.ts';
import { keyHints } from '../../core/words/notices.ts';
import { capitalize } from '../../core/words/numbers.ts';
import { subjectSentence } from '../../core/words/reading/subject.ts';
import { passageWord } from '../../core/words/reading-words.ts';
import { valueInWords } from '../../core/words/values.ts';
import { bitmapLayer, type Layer, wallGrey, whereLayer } from '../../drawing/layers.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import { SliderRow } from '../../ui/controls/slider-row.tsx';
import { Picture } from '../../ui/picture/picture.tsx';
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
  /** Makes the proposed line hers; null where nothing is proposed. */
  onTake: (() => void) | null;
  onRefuse: () => void;
}

function hintFor(mode: SubjectMode, hasSubject: boolean, isAsked: boolean): string {
  if (mode === 'add') return 'Paint over what belongs to the subject.';
  if (mode === 'take') return 'Paint over what is background.';
  return hasSubject
    ? 'Fix it with Add and Remove, or draw a new line round it.'
    : `${isAsked ? 'Or draw' : 'Draw'} a loose line round the subject, just outside it. It gets colours and washes of its own, apart from the background.`;
}

const keysFor = (mode: SubjectMode): string => (mode === 'circle' ? keyHints.oval : keyHints.brush);

function describeSubject({ found, empty, problem }: SubjectLine): string {
  if (problem) return problem;
  if (empty) return 'Nothing of this picture lies in your line. Draw round the subject again.';
  return found ? subjectSentence(found.facts) : '';
}

/** What is drawn with, how the subject stands, and both sides in grey. */
export function SubjectPanel(props: SubjectPanelProps) {
  const { line, grey, size, mode, brush, view, hintId, onTake, onRefuse } = props;
  const { found, looking } = line;
  return (
    <div class={styles.panel}>
      {onTake && (
        <div class={styles.proposal} data-testid="subject-proposal">
          <p class={styles.first}>What lies in the dashed line stands out. Is it your subject?</p>
          <Button onClick={onTake}>Yes, take it</Button>
          <Button onClick={onRefuse}>No</Button>
        </div>
      )}
      {found && (
        <ChoiceRow
          label="What you draw with"
          choices={[
            ['circle', 'Circle'],
            ['add', 'Add'],
            ['take', 'Remove'],
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
          said={brush.value < 0.03 ? 'small' : brush.value < 0.08 ? 'medium' : 'large'}
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
      <p id={hintId} class={found || onTake ? 'quiet' : styles.first}>
        {hintFor(mode.value, found !== null, onTake !== undefined)}
        <span class="quiet keys"> {keysFor(mode.value)}</span>
      </p>
      <p class={styles.sentence} role="status" data-testid="subject-sentence">
        {describeSubject(line) || (looking ? 'Getting the picture ready …' : '')}
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

interface SidePicturesProps {
  found: SubjectResult;
  grey: ImageBitmap;
  size: PixelSize;
}

const longSidePx = 480;

/** The subject alone and the ground alone in grey, with the value of each. */
function SidePictures({ found, grey, size }: SidePicturesProps) {
  const { mask, facts } = found;
  const sides = useMemo(() => {
    const small = shrinkSlots(mask, size.width, size.height, longSidePx);
    const alone = (side: 0 | 1) =>
      whereLayer(bitmapLayer(grey), small.slotMap, new Set([side]), wallGrey);
    return { size: small, subject: alone(1), ground: alone(0) };
  }, [mask, grey, size.width, size.height]);
  return (
    <div class={styles.pair}>
      {(['subject', 'ground'] as const).map((side) => (
        <figure key={side}>
          <div class={styles.picture} style={{ aspectRatio: size.width / size.height }}>
            <Picture
              label={`The ${passageWord(side)} alone, in grey`}
              size={sides.size}
              layers={{ alone: sides[side] }}
              show="alone"
            />
          </div>
          <figcaption>
            {capitalize(passageWord(side))}, {valueInWords(facts.meanLightness[side])}
          </figcaption>
        </figure>
      ))}
      <p class={styles.sidePicturesQuiet}>Mean values; 0 is black, 10 is white.</p>
    </div>
  );
}

/** The reference in colour and in grey; once there is a subject, also with its ground dimmed. */
export function subjectLayers(
  { reference, grey }: Pictures,
  found: SubjectResult | null,
): Record<string, Layer> {
  const colour = bitmapLayer(reference);
  const inGrey = bitmapLayer(grey);
  if (!found) return { colour, grey: inGrey };
  const alone = (under: Layer): Layer => whereLayer(under, found.mask, new Set([1]), wallGrey);
  return { colour, grey: inGrey, 'colour-alone': alone(colour), 'grey-alone': alone(inGrey) };
}
