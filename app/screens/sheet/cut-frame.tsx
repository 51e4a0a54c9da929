import type { PixelSize } from '../../model/pixel-size.ts';
import styles from './cut-frame.module.css';
import type { StageView } from './stage-view.ts';

/** Lines at the thirds of the frame: for placing the subject, and for carrying the drawing over. */
function thirds({ x, y, width, height }: StageView['frame']): string {
  const across = [1, 2].map((n) => `M${x + (n * width) / 3} ${y}v${height}`);
  const down = [1, 2].map((n) => `M${x} ${y + (n * height) / 3}h${width}`);
  return [...across, ...down].join('');
}

/** Angles at the four corners: where the frame is taken hold of. */
function corners({ x, y, width, height }: StageView['frame']): string {
  const arm = Math.min(22, width / 4, height / 4);
  return [
    `M${x} ${y + arm}V${y}H${x + arm}`,
    `M${x + width - arm} ${y}H${x + width}V${y + arm}`,
    `M${x + width} ${y + height - arm}V${y + height}H${x + width - arm}`,
    `M${x + arm} ${y + height}H${x}V${y + height - arm}`,
  ].join('');
}

/** What is left out, dimmed to the surround; the edge of the sheet and its thirds. */
export function CutFrame({ stage, view }: { stage: PixelSize; view: StageView }) {
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
