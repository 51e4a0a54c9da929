import { useEffect, useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { PhotoFacts } from '../../../workers/api.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import { fittedToSheet, turnedCrop } from '../../core/reference/move-crop.ts';
import { type Crop, centredCrop } from '../../core/reference/reference.ts';
import type { Sheet } from '../../core/reference/sheet.ts';
import { sheetInWords } from '../../core/words/reference/sheet.ts';
import type { App } from '../../state/create-app.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ChoiceRow } from '../../ui/controls/choice-row.tsx';
import layout from '../../ui/layout/screen-layout.module.css';
import { ScreenLayout } from '../../ui/layout/screen-layout.tsx';
import { Waiting } from '../../ui/layout/waiting.tsx';
import { CutChoice } from './cut-choice.tsx';
import { CutStage } from './cut-stage.tsx';
import { OwnSheetFields, SheetChoice } from './sheet-choice.tsx';
import styles from './sheet-screen.module.css';

interface SheetScreenProps {
  /** The upright photo, small; stays with the caller, who closes it. */
  preview: ImageBitmap;
  /** Size of the photo itself, upright. */
  photo: PixelSize;
  sheet: Sheet;
  crop: Crop;
  /** Sheet and cut at rest: after a choice, or when fingers, slider or keys are let go. */
  onChange: (sheet: Sheet, crop: Crop) => void;
  onDone: () => void;
  onCancel: () => void;
}

/** The sheet she will paint on, and which part of the photo goes on it. */
export function SheetScreen({
  preview,
  photo,
  onChange,
  onDone,
  onCancel,
  ...given
}: SheetScreenProps) {
  const hintId = useId();
  const [part, setPart] = useState<'sheet' | 'cut'>('sheet');
  const [grey, setGrey] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  // What is under the fingers, ahead of what has been handed out. A ref as well as a render: two
  // events may come before the next render, and the second must build on the first.
  const draft = useRef<{ sheet: Sheet; crop: Crop } | null>(null);
  const [, showDraft] = useState(0);
  useLayoutEffect(() => {
    draft.current = null;
    showDraft((count) => count + 1);
  }, [given.sheet, given.crop]);

  const readDraft = (): { sheet: Sheet; crop: Crop } => draft.current ?? given;
  const show = (sheet: Sheet, crop: Crop): void => {
    draft.current = { sheet, crop };
    showDraft((count) => count + 1);
  };
  const settle = (sheet: Sheet, crop: Crop): void => {
    show(sheet, crop);
    onChange(sheet, crop);
  };
  const moveCut = (crop: Crop): void => show(readDraft().sheet, crop);
  const settleCut = (): void => settle(readDraft().sheet, readDraft().crop);
  const chooseSheet = (sheet: Sheet): void => {
    setProblem(null);
    settle(sheet, fittedToSheet(photo, readDraft().crop, sheet));
  };
  const turn = (quarters: 1 | -1): void => {
    const { sheet, crop } = readDraft();
    const lying = { ...sheet, widthMm: sheet.heightMm, heightMm: sheet.widthMm };
    setProblem(null);
    settle(lying, turnedCrop(photo, crop, quarters));
  };
  const done = (): void => {
    if (problem) setPart('sheet');
    else onDone();
  };

  const { sheet, crop } = readDraft();
  const words = sheetInWords(sheet);
  return (
    <ScreenLayout
      name="sheet"
      top={
        <>
          <Button look="quiet" onClick={onCancel}>
            Cancel
          </Button>
          <h1 class={layout.title}>Fit it to your sheet</h1>
          <Button aria-pressed={grey} onClick={() => setGrey(!grey)}>
            Grey
          </Button>
        </>
      }
      picture={
        <CutStage
          preview={preview}
          grey={grey}
          photo={photo}
          crop={crop}
          label={`The part of your photo that goes on the sheet. ${words}`}
          hintId={hintId}
          onMove={moveCut}
          onSettle={settleCut}
          onTurn={() => turn(1)}
        />
      }
      panel={
        <div class={styles.panel}>
          <div class={styles.parts}>
            <ChoiceRow
              label="What to set"
              choices={[
                ['sheet', 'Sheet'],
                ['cut', 'Crop'],
              ]}
              chosen={part}
              onChoose={setPart}
            />
          </div>
          <section class={styles.part} data-shown={part === 'sheet'} aria-label="Sheet">
            <SheetChoice sheet={sheet} onChoose={chooseSheet} />
            {sheet.format === 'own' && (
              <OwnSheetFields
                sheet={sheet}
                onChoose={chooseSheet}
                problem={problem}
                onProblem={setProblem}
              />
            )}
            {!problem && (
              <p class={styles.words} role="status">
                {words}
              </p>
            )}
          </section>
          <section class={styles.part} data-shown={part === 'cut'} aria-label="Crop">
            <CutChoice
              photo={photo}
              crop={crop}
              hintId={hintId}
              onMove={moveCut}
              onSettle={settleCut}
              onTurn={turn}
              onLargest={() => settle(sheet, centredCrop(photo, sheet, crop.turn))}
            />
          </section>
        </div>
      }
      actions={
        <Button look="main" large onClick={done}>
          Use this part
        </Button>
      }
    />
  );
}

/** Opens the photo for the sheet screen and hands on what was decided there. */
export function SheetPlace({ app, paintingId }: { app: App; paintingId: string }) {
  const [facts, setFacts] = useState<PhotoFacts | null>(null);
  const painting = app.studio.painting.value;
  const photoId = painting?.id === paintingId ? painting.reference.photoId : null;
  useEffect(() => {
    if (!photoId) return;
    const controller = new AbortController();
    let opened: PhotoFacts | null = null;
    void app.studio.openPhoto(controller.signal).then((found) => {
      opened = found;
      setFacts(found);
    });
    return () => {
      controller.abort();
      opened?.preview.close();
    };
  }, [app, photoId]);
  const before = useRef(painting?.reference);
  if (painting && !before.current) before.current = painting.reference;
  const done = (): void => app.router.go({ screen: 'look', paintingId });
  const cancel = (): void => {
    const was = before.current;
    if (was) void app.studio.setReference(was.sheet, was.crop);
    done();
  };
  if (!painting || !facts) return <Waiting studio={app.studio} />;
  return (
    <SheetScreen
      preview={facts.preview}
      photo={facts}
      sheet={painting.reference.sheet}
      crop={painting.reference.crop}
      onChange={(sheet, crop) => void app.studio.setReference(sheet, crop)}
      onDone={done}
      onCancel={cancel}
    />
  );
}
