import { useMemo } from 'preact/hooks';
import { sheetWetnesses } from '../../core/compare/comparison.ts';
import { refusalInWords, wetnessWords } from '../../core/words/compare/compare-words.ts';
import { words } from '../../core/words/plan/words.ts';
import { sheetLayer } from '../../drawing/layers.ts';
import type { PictureCalls } from '../../state/painting/screen-calls.ts';
import type { Comparing } from '../../state/session/comparing.ts';
import type { Desk } from '../../state/session/desk.ts';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import select from '../../ui/controls/select.module.css';
import { Picture } from '../../ui/picture/picture.tsx';
import { sheetMapOf } from '../../ui/picture/step-layers.ts';
import { useSoft } from '../../ui/picture/use-soft.ts';
import styles from './compare-screen.module.css';
import { sideWords } from './compared-choices.tsx';
import shown from './compared-picture.module.css';

interface TakePictureProps {
  desk: Desk;
  comparing: Comparing;
  calls: PictureCalls;
}

/** The sheet as it should look at this stage: what the photo will be held against. */
export function TakePicture({ desk, comparing, calls }: TakePictureProps) {
  const step = comparing.step.value;
  const { seen, edges } = desk;
  const picture = useMemo(
    () => ({ slotMap: seen.slotMap, size: seen.reading.raster, edges }),
    [seen, edges],
  );
  const soft = useSoft(calls, picture);
  const layers = useMemo(
    () => (step ? { sheet: sheetLayer(sheetMapOf(seen, soft), step) } : null),
    [seen, soft, step],
  );
  if (!step || !layers) return null;
  return (
    <Picture
      label={`As planned after ${words(step.title)}`}
      size={seen.reading.raster}
      layers={layers}
      show="sheet"
      over={
        <p class={shown.names} aria-hidden="true">
          <span>{sideWords.planned}</span>
        </p>
      }
    />
  );
}

/** Which stage it is and how wet the sheet is, and how to photograph it well. */
export function TakePanel({ comparing }: { comparing: Comparing }) {
  const step = comparing.step.value;
  const { wetness } = comparing.draft.value;
  if (!step) return <p>{refusalInWords('nothing-painted')}</p>;
  return (
    <div class={styles.panel}>
      <label class={styles.stage}>
        <span>Your sheet after</span>
        <select
          class={select.select}
          value={step.key}
          onChange={({ currentTarget }) => comparing.change({ key: currentTarget.value })}
        >
          {comparing.steps.value.map(({ key, n, title }) => (
            <option key={key} value={key}>
              {n}. {words(title)}
            </option>
          ))}
        </select>
      </label>
      <p aria-hidden="true">How dry is the sheet?</p>
      <ChoiceRow
        label="How dry is the sheet?"
        choices={sheetWetnesses.map((each) => [each, wetnessWords[each]] as const)}
        chosen={wetness}
        onChoose={(next) => comparing.change({ wetness: next })}
      />
      {wetness === null && <p>Say how dry it is, then photograph it:</p>}
      {wetness === 'shiny' && (
        <p class={styles.refused} role="status">
          {refusalInWords('shiny')}
        </p>
      )}
      {wetness === 'satin' && (
        <p role="status">Satin will do, but a sheet that is bone dry tells more truly.</p>
      )}
      <ul class={styles.tips}>
        <li>The whole painting from straight above, with some border or board round it.</li>
        <li>In even daylight: no flash, no shine on the paper, no shadow of yours.</li>
        <li>A little darker than the camera wants, so that white paper isn’t blown out.</li>
      </ul>
    </div>
  );
}
