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
    if (event.key === 'r' || event.key === 'R') {
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

/** Lines at the thirds of the frame: for placing the subject, and for carrying the drawing over. */
function thirds({ x, y, width, height }: CutView['frame']): string {
  const across = [1, 2].map((n) => `M${x + (n * width) / 3} ${y}v${height}`);
  const down = [1, 2].map((n) => `M${x} ${y + (n * height) / 3}h${width}`);
  return [...across, ...down].join('');
}

/** Angles at the four corners: where the frame is taken hold of. */
function corners({ x, y, width, height }: CutView['frame']): string {
  const arm = Math.min(22, width / 4, height / 4);
  return [
    `M${x} ${y + arm}V${y}H${x + arm}`,
    `M${x + width - arm} ${y}H${x + width}V${y + arm}`,
    `M${x + width} ${y + height - arm}V${y + height}H${x + width - arm}`,
    `M${x + arm} ${y + height}H${x}V${y + height - arm}`,
  ].join('');
}

/** What is left out, dimmed to the surround; the edge of the sheet and its thirds. */
function CutFrame({ stage, view }: { stage: PixelSize; view: CutView }) {
  const { x, y, width, height } = view.frame;
  const outline = `M${x} ${y}h${width}v${height}h${-width}z`;
  const grid = thirds(view.frame);
  const holds = corners(view.frame);
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
      <path class={styles.gridCasing} d={grid} />
      <path class={styles.grid} d={grid} />
      <path class={styles.casing} d={outline} />
      <path class={styles.line} d={outline} />
      <path class={styles.holdCasing} d={holds} />
      <path class={styles.hold} d={holds} />
    </svg>
  );
}
