import { cssColour, type Lab } from '../../core/colour/lab.ts';
import {
  type DraftPatch,
  fewestSteps,
  type PatchMeaning,
  quiteSure,
  rowsOfFrames,
  stepOfAmount,
  withLadderTurned,
} from '../../core/paint/measure/paint-measure.ts';
import type { PaintCard } from '../../core/paint/paint.ts';
import { spellOrdinal } from '../../core/words/numbers.ts';
import {
  draftCautionInWords,
  otherHueInWords,
  sureWhyInWords,
} from '../../core/words/paint/measured-paint.ts';
import type {
  MeasuredPaint,
  MeasuringPhoto,
  PaintMeasuring,
} from '../../state/paints/paint-measuring.ts';
import { Button } from '../../ui/controls/button.tsx';
import styles from './measure-screen.module.css';
import { holdingChoices, holdingValue, PatchList } from './patch-list.tsx';
import { PatchStage } from './patch-stage.tsx';

interface MeasureFramesProps {
  card: PaintCard;
  cards: readonly PaintCard[];
  measuring: PaintMeasuring;
  photo: MeasuringPhoto;
  onKept: () => void;
}

/** Where a new frame is put: in the middle, of a size that can be taken hold of. */
export const newFrame: DraftPatch = {
  frame: { left: 0.44, top: 0.44, width: 0.12, height: 0.12 },
  is: null,
};

/** The photo with its frames, what each holds, and what comes of it. */
export function MeasureFrames({ card, cards, measuring, photo, onKept }: MeasureFramesProps) {
  const draft = measuring.drafts.value[card.id] ?? [];
  const found = measuring.result.value;
  const busy = measuring.work.value !== null;
  const groups = holdingChoices(cards.filter(({ id }) => id !== card.id));
  const texts = new Map(
    groups.flatMap(({ choices }) =>
      choices.map(({ is, text }) => [holdingValue(is), text] as const),
    ),
  );
  const inWords = (is: PatchMeaning): string =>
    texts.get(holdingValue(is)) ?? 'Half a paint taken out';
  const steps = draft.filter(({ is }) => is?.kind === 'step').length;
  const isOwn = card.optics !== undefined;

  return (
    <>
      <p>
        One frame to each patch, well inside it: drag it to move it, its corner to change its size.
        The rings mark bare paper.
      </p>
      <PatchStage
        photo={photo}
        draft={draft}
        inWords={({ is }) => is && inWords(is)}
        onChange={measuring.change}
      />
      <div class={styles.actions}>
        <Button onClick={() => measuring.change([...draft, newFrame])}>Add a frame</Button>
        <Button disabled={busy} onClick={() => void measuring.findAgain()}>
          Find the patches again
        </Button>
        {otherRows(draft).map((row) => (
          <Button key={row} disabled={busy} onClick={() => void measuring.takeRow(row)}>
            The steps are the {spellOrdinal(row + 1)} row
          </Button>
        ))}
        {steps >= fewestSteps && (
          <Button onClick={() => measuring.change(withLadderTurned(draft))}>
            Count from the other end
          </Button>
        )}
      </div>
      <PatchList draft={draft} groups={groups} onChange={measuring.change} />
      {steps < fewestSteps && (
        <p>Say which step is in which frame: two at least, better all five.</p>
      )}
      <div class={styles.actions}>
        <Button
          look={found ? 'plain' : 'main'}
          disabled={busy || steps < fewestSteps}
          onClick={() => void measuring.measure(card)}
        >
          Measure
        </Button>
      </div>
      {found && (
        <>
          <MeasureResult found={found} inWords={inWords} />
          {!isOwn && (
            <p>Kept as a paint of your own, “my {card.name}”; the built-in one stays as it is.</p>
          )}
          <div class={styles.actions}>
            <Button
              look="main"
              onClick={() => void measuring.keep(card).then((kept) => kept && onKept())}
            >
              Keep it
            </Button>
          </div>
        </>
      )}
    </>
  );
}

/** Rows of frames that could be the ladder and are not. */
function otherRows(draft: readonly DraftPatch[]): number[] {
  const rows = rowsOfFrames(draft);
  const stepsIn = (row: readonly number[]): number =>
    row.filter((n) => draft[n]?.is?.kind === 'step').length;
  const most = Math.max(...rows.map(stepsIn));
  return rows.flatMap((row, n) => (row.length >= fewestSteps && stepsIn(row) < most ? [n] : []));
}

interface MeasureResultProps {
  found: MeasuredPaint;
  inWords: (is: PatchMeaning) => string;
}

const tenths = Array.from({ length: 10 }, (_, n) => n);

/** Each patch as measured over the same as the paint found would have it, and how sure that is. */
function MeasureResult({ found, inWords }: MeasureResultProps) {
  const { measure, patches, cautions } = found;
  return (
    <>
      <ul class={styles.pairs} data-testid="measured-pairs">
        {patches.map(({ is, lab }, n) => (
          <li key={n} class={styles.pair}>
            <span class={styles.swatch} style={{ background: cssColour(lab) }} />
            <span
              class={styles.swatch}
              style={{ background: cssColour(measure.expected[n] as Lab) }}
            />
            {is.kind === 'step' ? `Step ${stepOfAmount(is.amount)}` : inWords(is)}
          </li>
        ))}
      </ul>
      <p class="quiet">Above: your patch in the photo. Below: the same as the app will mix it.</p>
      {cautions.map(draftCautionInWords).map((caution) => (
        <p key={caution} role="status">
          {caution}
        </p>
      ))}
      {measure.question && (
        <p role="status" data-testid="question">
          {otherHueInWords(measure.question)}
        </p>
      )}
      <div class={styles.meter} aria-hidden="true">
        {tenths.map((n) => (
          <span key={n} data-full={n < Math.round(10 * measure.sure) || undefined} />
        ))}
      </div>
      <p class={styles.sure} role="status" data-testid="sure">
        <strong>{describeCertainty(measure.sure)}</strong> {sureWhyInWords(measure.why)}
      </p>
    </>
  );
}

/** How sure a measured paint is, 0..1, in two words. */
function describeCertainty(sure: number): string {
  if (sure >= quiteSure) return 'Quite sure.';
  if (sure >= 0.45) return 'Fairly sure.';
  if (sure >= 0.25) return 'Not sure.';
  return 'Hardly sure at all.';
}
