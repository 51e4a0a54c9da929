import type { DraftPatch } from '../../model/measure-draft.ts';
import type { PaintCard } from '../../model/paint.ts';
import { fewestSteps, type PatchMeaning } from '../../model/paint-measure.ts';
import type { MeasuringPhoto, PaintMeasuring } from '../../state/paint-measuring.ts';
import { Button } from '../common/button.tsx';
import { holdingChoices, holdingValue } from './holding-words.ts';
import { MeasureResult } from './measure-result.tsx';
import styles from './measure-screen.module.css';
import { PatchList } from './patch-list.tsx';
import { PatchStage } from './patch-stage.tsx';

interface MeasureFramesProps {
  card: PaintCard;
  cards: readonly PaintCard[];
  measuring: PaintMeasuring;
  photo: MeasuringPhoto;
  onKept: () => void;
}

/** Where a new frame is put: in the middle, of a size that can be taken hold of. */
const newFrame: DraftPatch = {
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
        Each frame belongs on one patch: drag it, or its corner to change its size. Rings show where
        bare paper was seen.
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
      </div>
      <PatchList draft={draft} groups={groups} onChange={measuring.change} />
      {steps < fewestSteps && (
        <p>Say of at least two frames which step they hold, better of five.</p>
      )}
      <div class={styles.actions}>
        <Button
          look="main"
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
