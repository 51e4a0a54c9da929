import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { makeGrey } from '../../core/colour/srgb.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import type { Crop } from '../../core/reference/reference.ts';
import { Stage } from '../../ui/pointer/stage.tsx';
import { isShortcut } from '../../ui/pointer/stage-keys.ts';
import { moveCutByKey } from './cut-choice.tsx';
import styles from './cut-stage.module.css';
import { type CutView, fitCutView, useCutGesture } from './use-cut-gesture.ts';

interface CutStageProps {
  preview: ImageBitmap;
  grey: boolean;
  photo: PixelSize;
  crop: Crop;
  label: string;
  /** Id of the hint that says what the keys do. */
  hintId: string;
  /** The cut while it is being moved. */
  onMove: (crop: Crop) => void;
  /** The cut once fingers or keys are let go. */
  onSettle: (crop: Crop) => void;
  onTurn: () => void;
}

/** The photo, turned as asked, with the cut over it; moved by fingers and by keys. */
export function CutStage(props: CutStageProps) {
  const { preview, grey, photo, crop, label, hintId, onMove, onSettle, onTurn } = props;
  const stage = useRef<HTMLDivElement>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const byKey = useRef<Crop | null>(null);
  const [size, setSize] = useState<PixelSize>({ width: 0, height: 0 });

  useLayoutEffect(() => {
    const element = stage.current;
    if (!element) return;
    const measure = (): void =>
      setSize({ width: element.clientWidth, height: element.clientHeight });
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    measure();
    return () => watcher.disconnect();
  }, []);

  useLayoutEffect(() => {
    const element = canvas.current;
    if (!element || preview.width === 0) return; // a bitmap already handed on is 0 wide
    element.width = preview.width;
    element.height = preview.height;
    const context = element.getContext('2d');
    if (!context) return;
    context.drawImage(preview, 0, 0);
    if (!grey) return;
    const image = context.getImageData(0, 0, preview.width, preview.height);
    makeGrey(image.data);
    context.putImageData(image, 0, 0);
  }, [preview, grey]);

  const view = fitCutView(photo, crop, size);
  const handlers = useCutGesture({ photo, crop, view, onMove, onSettle });

  const keyDown = (event: KeyboardEvent): void => {
    if (isShortcut(event)) return;
    if (event.key === 't' || event.key === 'T') {
      if (!event.repeat) onTurn();
      event.preventDefault();
      return;
    }
    const next = moveCutByKey(photo, byKey.current ?? crop, event.key, event.shiftKey);
    if (!next) return;
    event.preventDefault();
    byKey.current = next;
    onMove(next);
  };
  const letGo = (): void => {
    if (byKey.current) onSettle(byKey.current);
    byKey.current = null;
  };

  return (
    <Stage
      stageRef={stage}
      class={styles.stage}
      label={label}
      aria-describedby={hintId}
      name="cut-stage"
      onKeyDown={keyDown}
      onKeyUp={letGo}
      onBlur={letGo}
      {...handlers}
    >
      <canvas
        ref={canvas}
        class={styles.photo}
        style={{
          width: `${photo.width * view.scale}px`,
          height: `${photo.height * view.scale}px`,
          transform: `translate(-50%, -50%) rotate(${crop.turn}deg)`,
        }}
      />
      <CutFrame stage={size} view={view} />
    </Stage>
  );
}

type Frame = CutView['frame'];

/** Lines at halves and quarters of the sheet, those a drawing is carried over by. */
function quarters({ x, y, width, height }: Frame, at: readonly number[]): string {
  const across = at.map((n) => `M${x + (n * width) / 4} ${y}v${height}`);
  const down = at.map((n) => `M${x} ${y + (n * height) / 4}h${width}`);
  return [...across, ...down].join('');
}

/** How wide the arm of a card is, px: seen as a card, and leaving sight of what is cut off beyond it. */
const armWidth = (stage: PixelSize): number =>
  Math.max(22, Math.min(52, Math.min(stage.width, stage.height) / 11));

/**
 * An L of card whose inner corner lies at a corner of the opening: its arms run along two sides and on past their
 * ends, as far as they are wide and half as much again. `turn` 1: the upper left corner; -1: the lower right one.
 */
function cardOf({ x, y, width, height }: Frame, arm: number, turn: 1 | -1): string {
  const [cornerX, cornerY] = turn === 1 ? [x, y] : [x + width, y + height];
  const at = (right: number, down: number): string =>
    `${cornerX + turn * right} ${cornerY + turn * down}`;
  const [long, tall] = [width + 1.5 * arm, height + 1.5 * arm];
  const corners = [
    at(0, 0),
    at(long, 0),
    at(long, -arm),
    at(-arm, -arm),
    at(-arm, tall),
    at(0, tall),
  ];
  return `M${corners.join('L')}Z`;
}

/**
 * The trade's viewfinder: two L-shaped cards laid over each other, the sheet open between them; beyond them what is
 * left out, dimmed to the surround. Fine lines at the halves and quarters of the sheet.
 */
function CutFrame({ stage, view }: { stage: PixelSize; view: CutView }) {
  const { x, y, width, height } = view.frame;
  const outline = `M${x} ${y}h${width}v${height}h${-width}z`;
  const arm = armWidth(stage);
  const halves = quarters(view.frame, [2]);
  const others = quarters(view.frame, [1, 3]);
  return (
    <svg
      class={styles.frame}
      viewBox={`0 0 ${stage.width} ${stage.height}`}
      width={stage.width}
      height={stage.height}
      aria-hidden="true"
    >
      <path
        class={styles.veil}
        fill-rule="evenodd"
        d={`M0 0h${stage.width}v${stage.height}H0z${outline}`}
      />
      <path class={styles.lineCasing} d={others + halves} />
      <path class={styles.quarters} d={others} />
      <path class={styles.halves} d={halves} />
      <path class={styles.card} data-testid="upper-card" d={cardOf(view.frame, arm, 1)} />
      <path class={styles.card} d={cardOf(view.frame, arm, -1)} />
    </svg>
  );
}
