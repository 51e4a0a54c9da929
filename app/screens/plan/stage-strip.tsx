import { useEffect, useMemo, useRef } from 'preact/hooks';
import { slotLayer } from '../../drawing/layers.ts';
import { shrinkSlots } from '../../drawing/shrink-slots.ts';
import type { Step } from '../../model/wash-plan.ts';
import type { Seen } from '../../state/seen.ts';
import styles from './stage-strip.module.css';

interface StageStripProps {
  seen: Seen;
  steps: readonly Step[];
  current: number;
  onStep: (index: number) => void;
}

/** How the sheet looks after each step, small, one beside the other. */
export function StageStrip({ seen, steps, current, onStep }: StageStripProps) {
  const { width, height } = seen.reading.raster;
  const small = useMemo(() => shrinkSlots(seen.slotMap, width, height, 160), [seen]);
  const strip = useRef<HTMLOListElement>(null);
  useEffect(() => {
    const stage = strip.current?.children[current];
    if (stage instanceof HTMLElement && strip.current)
      strip.current.scrollLeft =
        stage.offsetLeft - strip.current.clientWidth / 2 + stage.clientWidth / 2;
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
            <Thumbnail small={small} step={step} />
            <span class={styles.name}>
              {step.n}. {step.title}
            </span>
          </button>
        </li>
      ))}
    </ol>
  );
}

function Thumbnail({ small, step }: { small: ReturnType<typeof shrinkSlots>; step: Step }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context) slotLayer(small.slotMap, step.after)(context);
  }, [small, step]);
  return <canvas ref={canvas} width={small.width} height={small.height} class={styles.thumbnail} />;
}
