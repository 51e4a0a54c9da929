import type { Signal } from '@preact/signals';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import type { Advice } from '../../core/compare/comparison.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import { Picture } from '../../ui/picture/picture.tsx';
import { Stage } from '../../ui/pointer/stage.tsx';
import { isShortcut } from '../../ui/pointer/stage-keys.ts';
import { placeInShares, usePointers } from '../../ui/pointer/use-pointers.ts';
import { type ComparedView, pairs, type Side, sideWords } from './compared-choices.tsx';
import { comparedLayers, type SheetPictures, whereLayer } from './compared-layers.ts';
import styles from './compared-picture.module.css';

interface ComparedPictureProps {
  seen: OpenedReading;
  pictures: SheetPictures;
  view: Signal<ComparedView>;
  /** The advice she looks at, and whether all but its places is dimmed. */
  advice: Advice | null;
  pointed: boolean;
}

/** Two of reference, plan and painting in one place: a line between them, or one after the other. */
export function ComparedPicture({ seen, pictures, view, advice, pointed }: ComparedPictureProps) {
  const layers = useMemo(() => comparedLayers(seen, pictures, advice), [seen, pictures, advice]);
  const where = useMemo(
    () => (advice && pointed ? { where: whereLayer(pictures, advice) } : null),
    [pictures, advice, pointed],
  );
  const { pair, look, split, second } = view.value;
  const grey = view.value.grey || look === 'room';
  const [one, other] = pairs[pair];
  const named = (side: Side): string => (grey ? `${side}-grey` : side);
  const set = (change: Partial<ComparedView>): void => {
    view.value = { ...view.peek(), ...change };
  };
  useBlinking(view);
  const isOne = look === 'blink' && !second;
  const line = look === 'blink' ? (isOne ? 1 : 0) : split;
  return (
    <div
      class={styles.place}
      data-room={look === 'room' || undefined}
      data-testid="compared"
      data-shows={`${named(one)} ${named(other)}`}
    >
      <Picture
        label={`${sideWords[one]} and ${sideWords[other]}`}
        size={pictures.size}
        layers={layers}
        show={named(other)}
        over={
          <>
            <div class={styles.clip} style={{ clipPath: `inset(0 ${100 * (1 - line)}% 0 0)` }}>
              <Picture
                label={sideWords[one]}
                size={pictures.size}
                layers={layers}
                show={named(one)}
              />
            </div>
            {where && look !== 'room' && (
              <div class={styles.clip}>
                <Picture label="Where it is" size={pictures.size} layers={where} show="where" />
              </div>
            )}
            <SplitStage
              label={`${sideWords[one]} on the left, ${sideWords[other]} on the right.`}
              split={look === 'blink' ? null : split}
              onSplit={(next) => set({ split: next })}
              onTap={() =>
                look === 'blink'
                  ? set({ second: !second, runs: false })
                  : set({ grey: !view.peek().grey })
              }
            />
            <p class={styles.names} aria-hidden="true">
              <span hidden={line === 0}>{sideWords[one]}</span>
              <span hidden={line === 1}>{sideWords[other]}</span>
            </p>
          </>
        }
      />
    </div>
  );
}

/** Slower than once a second: nothing here flashes. */
const blinkMs = 1200;

/** One after the other by itself, as long as that is asked for. */
function useBlinking(view: Signal<ComparedView>): void {
  const { look, runs } = view.value;
  useEffect(() => {
    if (look !== 'blink' || !runs) return;
    const turning = setInterval(() => {
      view.value = { ...view.peek(), second: !view.peek().second };
    }, blinkMs);
    return () => clearInterval(turning);
  }, [look, runs, view]);
}

interface SplitStageProps {
  label: string;
  /** Null: there is no line. */
  split: number | null;
  onSplit: (split: number) => void;
  onTap: () => void;
}

const splitStep = 0.02;
/** A finger that moved less than this meant a tap, as a share of the width. */
const stillShare = 0.015;

/** Lies over the pictures: a drag moves the line, a tap shows the other. */
function SplitStage({ label, split, onSplit, onTap }: SplitStageProps) {
  const from = useRef<number | null>(null);
  const moved = useRef(false);
  const { handlers } = usePointers({
    most: 1,
    captures: true,
    placeOf: (event) => placeInShares(event),
    onDown(_event, [x]) {
      from.current = x;
      moved.current = false;
      return true;
    },
    onMove(_event, [x]) {
      if (from.current !== null && Math.abs(x - from.current) > stillShare) moved.current = true;
      if (moved.current && split !== null) onSplit(x);
    },
    onUp() {
      if (!moved.current) onTap();
    },
    onCancel: () => undefined,
  });
  return (
    <Stage
      class={styles.stage}
      name="split-stage"
      label={`${label} ${split === null ? 'Enter shows the other.' : 'Left and right move the line, Enter turns grey.'}`}
      {...handlers}
      onKeyDown={(event) => {
        if (isShortcut(event)) return;
        const way = event.key === 'ArrowLeft' ? -1 : event.key === 'ArrowRight' ? 1 : 0;
        if (way !== 0 && split !== null)
          onSplit(Math.min(1, Math.max(0, split + way * splitStep * (event.shiftKey ? 5 : 1))));
        else if (event.key === 'Enter' || event.key === ' ') onTap();
        else return;
        event.preventDefault();
      }}
    >
      {split !== null && <span class={styles.line} style={{ left: `${100 * split}%` }} />}
    </Stage>
  );
}
