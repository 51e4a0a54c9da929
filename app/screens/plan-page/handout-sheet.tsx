import { useEffect, useRef } from 'preact/hooks';
import { cssColour } from '../../core/colour/lab.ts';
import { ownMarks } from '../../core/plan/details/place-marks.ts';
import { planRows } from '../../core/plan/evening/evening-times.ts';
import type { Mix, Step, WashPlan } from '../../core/plan/plan.ts';
import { words as told } from '../../core/words/plan/words.ts';
import type { Layer } from '../../drawing/layers.ts';
import type { OpenedReading } from '../../state/painting/opened-reading.ts';
import printed from '../../styles/printed-page.module.css';
import { useFittingType } from '../../ui/layout/use-fitting-type.ts';
import { mixWordsIn } from '../../ui/mixes/mix-words-in.ts';
import { coloursOf, partsSaid } from '../../ui/mixes/puddle-row.tsx';
import { pictureLayers, valuesLayer } from '../../ui/picture/picture-layers.ts';
import { stepLayers } from '../../ui/picture/step-layers.ts';
import styles from './handout-sheet.module.css';

interface HandoutSheetProps {
  title: string;
  seen: OpenedReading;
  plan: WashPlan;
}

/** What a page of a handout shows beside the plan: the photo, its values, and where each puddle goes. */
export function HandoutSheet({ title, seen, plan }: HandoutSheetProps) {
  const page = useRef<HTMLDivElement>(null);
  const type = useFittingType(page, plan);
  const steps = planRows(plan)
    .filter(({ changes }) => changes)
    .map(({ step }) => step);
  return (
    <div ref={page} class={`${printed.page} ${styles.second}`} data-testid="handout-sheet">
      <div class={styles.content} style={{ '--type': type }}>
        <h2 class={styles.title}>{title}: photo, values, places</h2>
        <div class={styles.pair}>
          <PrintedPicture words="The photo" seen={seen} layer={() => pictureLayers(seen).colour} />
          <PrintedPicture words="In few values" seen={seen} layer={() => valuesLayer(seen)} />
        </div>
        <p>
          The letters are puddles, the figures the order to paint in: big before small. What is grey
          is left alone in that step.
        </p>
        <div class={styles.steps}>
          {steps.map((step) => (
            <div key={step.key} class={styles.step}>
              <PrintedPicture
                words={`${step.n}. ${told(step.title)}`}
                seen={seen}
                layer={() => stepLayers(seen, plan, step, null).where}
              />
              <Puddles step={step} plan={plan} />
            </div>
          ))}
        </div>
      </div>
    </div>
  );
}

/** The puddles of a step by letter: the colour each dries to, and what it is mixed of. */
function Puddles({ step, plan }: { step: Step; plan: WashPlan }) {
  const inWords = mixWordsIn(plan);
  const puddles = new Map<string, Mix[]>();
  for (const mix of plan.mixes)
    if (mix.puddle !== null && step.mixes.includes(mix.id))
      puddles.set(mix.puddle, [...(puddles.get(mix.puddle) ?? []), mix]);
  return (
    <ul class={styles.puddles}>
      {[...puddles].map(([letter, uses]) => {
        const colour = coloursOf(uses, ownMarks(step)).at(-1);
        const parts = uses[0]?.parts ?? [];
        return (
          <li key={letter}>
            {colour && (
              <svg class={styles.square} viewBox="0 0 1 1" aria-hidden="true">
                <rect width="1" height="1" fill={cssColour(colour)} />
              </svg>
            )}{' '}
            <strong>{letter}</strong> {partsSaid(parts, inWords)}
          </li>
        );
      })}
    </ul>
  );
}

interface PrintedPictureProps {
  words: string;
  seen: OpenedReading;
  /** Asked for when it is painted: each is as large as the raster. */
  layer: () => Layer | undefined;
}

/** Long side, px: sharp in print at 90 mm. */
const printedPx = 1000;

/** A picture painted at the size of its raster, as tags and veils ask for, and kept small. */
function PrintedPicture({ words, seen, layer }: PrintedPictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { width, height } = seen.reading.raster;
  const scale = Math.min(1, printedPx / Math.max(width, height));
  useEffect(() => {
    const whole = new OffscreenCanvas(width, height);
    const [on, small] = [whole.getContext('2d'), canvas.current?.getContext('2d')];
    if (!on || !small) return;
    layer()?.(on);
    small.imageSmoothingQuality = 'high';
    small.drawImage(whole, 0, 0, small.canvas.width, small.canvas.height);
  }, [seen, width, height, words]);
  return (
    <figure class={styles.figure} style={{ '--ratio': width / height }}>
      <canvas
        ref={canvas}
        class={styles.picture}
        width={Math.round(width * scale)}
        height={Math.round(height * scale)}
      />
      <figcaption>{words}</figcaption>
    </figure>
  );
}
