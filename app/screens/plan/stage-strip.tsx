import { useEffect, useMemo, useRef } from 'preact/hooks';
import { eveningOf } from '../../core/plan/evening/evening-times.ts';
import type { Step, WashPlan } from '../../core/plan/plan.ts';
import { stepChanges } from '../../core/plan/step-changes.ts';
import { scaledMarks } from '../../core/raster/paint-marks.ts';
import { shrinkSlots } from '../../core/raster/paint-slots.ts';
import { scaledGrid } from '../../core/raster/paint-squares.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import { eveningName } from '../../core/words/plan/evenings.ts';
import { words } from '../../core/words/plan/words.ts';
import { type SheetMap, sheetLayer } from '../../drawing/layers.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import styles from './stage-strip.module.css';

interface StageStripProps {
  seen: OpenedReading;
  plan: WashPlan;
  current: number;
  onStep: (index: number) => void;
}

/** The steps one beside the other, those that change the sheet with how it looks then, small. */
export function StageStrip({ seen, plan, current, onStep }: StageStripProps) {
  const { steps } = plan;
  const changing = useMemo(() => steps.map((_, index) => changesSheet(plan, index)), [plan]);
  const { width, height } = seen.reading.raster;
  const small = useMemo(() => {
    const { squares, details } = seen.reading;
    const { slotMap, ...size } = shrinkSlots(seen.slotMap, width, height, 160);
    const scale = size.width / width;
    const sheet = {
      slotMap,
      ...(squares && { squares: scaledGrid(squares, scale) }),
      ...(details && { details: scaledMarks(details, scale) }),
      soft: null,
    };
    return { ...size, sheet };
  }, [seen]);
  const strip = useRef<HTMLOListElement>(null);
  useEffect(() => {
    // From the step before on, which stands whole at the side.
    const [first, before] = [0, Math.max(0, current - 1)].map((n) => strip.current?.children[n]);
    if (strip.current && first instanceof HTMLElement && before instanceof HTMLElement)
      strip.current.scrollLeft = before.offsetLeft - first.offsetLeft;
  }, [current]);
  return (
    <ol class={styles.strip} ref={strip}>
      {steps.map((step, index) => (
        <li key={step.key}>
          <button
            type="button"
            class={styles.stage}
            aria-current={index === current ? 'step' : undefined}
            onClick={() => onStep(index)}
          >
            {changing[index] && <Thumbnail small={small} step={step} />}
            {beginsEvening(steps, index) && (
              <span class={styles.evening}>{eveningName(eveningOf(step))}</span>
            )}
            <span>
              {step.n}. {words(step.title)}
              {step.consequence && (
                <strong class={styles.mark}>
                  <span class="spoken">, mind what your change does</span>
                </strong>
              )}
            </span>
          </button>
        </li>
      ))}
    </ol>
  );
}

/** Whether the sheet looks otherwise after a step: what only waits or gets ready has no picture of its own. */
function changesSheet(plan: WashPlan, index: number): boolean {
  const { slots, marks } = stepChanges(plan, index);
  return slots.size > 0 || marks.length > 0;
}

/** Whether another evening begins with this step. */
const beginsEvening = (steps: readonly Step[], index: number): boolean => {
  const [before, step] = [steps[index - 1], steps[index]];
  return before !== undefined && step !== undefined && eveningOf(before) !== eveningOf(step);
};

interface SmallSheet extends PixelSize {
  readonly sheet: SheetMap;
}

function Thumbnail({ small, step }: { small: SmallSheet; step: Step }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context) sheetLayer(small.sheet, step)(context);
  }, [small, step]);
  return <canvas ref={canvas} width={small.width} height={small.height} class={styles.thumbnail} />;
}
