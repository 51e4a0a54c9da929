import { useEffect, useRef } from 'preact/hooks';
import { softLayer } from '../../drawing/layers.ts';
import { bandWord } from '../../model/band-words.ts';
import type { Lab } from '../../model/lab.ts';
import { minutesInWords } from '../../model/minutes-in-words.ts';
import type { PlanRow } from '../../model/plan-rows.ts';
import type { Reading } from '../../model/reading.ts';
import { touchWindow } from '../../model/touch-window.ts';
import type { Step, WashPlan } from '../../model/wash-plan.ts';
import { Consequence } from '../common/consequence.tsx';
import styles from './plan-sheet.module.css';
import type { StageMap } from './stage-map.ts';

interface PlanStageProps {
  row: PlanRow;
  plan: WashPlan;
  reading: Reading;
  stage: StageMap;
}

/** The names of the puddles a step takes: 'A, B'. */
function puddlesOf(step: Step, plan: WashPlan): string {
  const mixes = plan.mixes.filter(({ id }) => step.mixes.includes(id));
  return [...new Set(mixes.flatMap(({ puddle }) => puddle ?? []))].join(', ');
}

/** The first words of how it is done: a page has little room. */
const shortly = (words: string): string => words.split(/[,:;]/)[0] ?? words;

/** One step: the sheet after it, what is done, on what paper, with which puddles, how long. */
export function PlanStage({ row, plan, reading, stage }: PlanStageProps) {
  const { step, wait, changes } = row;
  const puddles = puddlesOf(step, plan);
  const bands = step.bands.map((band) => bandWord(band, reading.bands.length)).join(', ');
  const facts = [
    step.technique !== 'none' && `${step.technique} on ${step.paper} paper`,
    bands && `for ${bands}`,
    puddles && `puddles ${puddles}`,
    step.brush && `with ${shortly(step.brush)}`,
    step.board && `board ${shortly(step.board)}`,
    step.paintMinutes[1] > 0 && minutesInWords(step.paintMinutes),
    wait && wait[1] > 0 && `then dry ${minutesInWords(wait)}, till no coolness is felt`,
  ].filter(Boolean);
  return (
    <li class={styles.stage} data-pictured={changes || undefined}>
      {changes && <Sheet stage={stage} after={step.after} />}
      <div>
        <h4 class={styles.step}>
          {step.n}. {step.title}
        </h4>
        <p class={styles.facts}>{facts.join('; ')}</p>
        <p>{step.prompt}</p>
        {step.soften && <p>{step.soften}</p>}
        {step.touches?.map((touch) => (
          <p key={touch.technique}>
            {touch.text.replace(/\.$/, '')} ({touchWindow(touch, step.shineMinutes)}).
          </p>
        ))}
        <Consequence step={step} />
      </div>
    </li>
  );
}

function Sheet({ stage, after }: { stage: StageMap; after: readonly Lab[] }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context) softLayer(stage.slotMap, stage.soft, after)(context);
  }, [stage, after]);
  return <canvas ref={canvas} class={styles.sheet} width={stage.width} height={stage.height} />;
}
