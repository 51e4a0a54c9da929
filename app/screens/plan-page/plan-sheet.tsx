import { type ComponentChildren, Fragment } from 'preact';
import { eveningTimes } from '../../model/evening-times.ts';
import { planTimeInWords } from '../../model/evening-words.ts';
import { layOut } from '../../model/lay-out.ts';
import { minutesInWords } from '../../model/minutes-in-words.ts';
import { planMinutes, planRows } from '../../model/plan-rows.ts';
import type { Reading } from '../../model/reading.ts';
import type { Sheet } from '../../model/sheet.ts';
import { sheetInWords } from '../../model/sheet-words.ts';
import type { WashPlan } from '../../model/wash-plan.ts';
import { EveningHead } from './evening-head.tsx';
import { PlanBands } from './plan-bands.tsx';
import { PlanMixes } from './plan-mixes.tsx';
import styles from './plan-sheet.module.css';
import { PlanStage } from './plan-stage.tsx';
import type { StageMap } from './stage-map.ts';

export interface PlanSheetProps {
  title: string;
  sheet: Sheet;
  plan: WashPlan;
  reading: Reading;
  stage: StageMap;
  /** Size of the type, 1 as designed. */
  type: number;
}

/** The whole plan on one page: stages, values, mixes, times. All lengths are parts of the page. */
export function PlanSheet({ title, sheet, plan, reading, stage, type }: PlanSheetProps) {
  const { work, wait } = planMinutes(plan);
  const rows = planRows(plan);
  const paints = plan.palette.map(({ name, ci }) => `${name} (${ci})`).join(', ');
  return (
    <div class={styles.content} style={{ '--type': type }}>
      <header class={styles.head}>
        <h2 class={styles.title}>{title}</h2>
        <p>
          {sheetInWords(sheet)} Work {minutesInWords(work)}
          {wait[1] > 0 && `, drying in between ${minutesInWords(wait)}`}.{' '}
          {planTimeInWords(eveningTimes(plan))}
        </p>
        <p>
          <strong>Paints</strong> {paints}
        </p>
        {layOut(plan)
          .filter(({ name }) => name !== 'Paints')
          .map(({ name, things }) => (
            <p key={name}>
              <strong>{name}</strong> {things.join('; ')}
            </p>
          ))}
      </header>
      <PlanBands bands={reading.bands} range={plan.range} />
      <Part name="Steps">
        <ol class={styles.stages}>
          {rows.map((row, i) => (
            <Fragment key={row.step.key}>
              <EveningHead step={row.step} before={rows[i - 1]?.step} />
              <PlanStage row={row} plan={plan} reading={reading} stage={stage} />
            </Fragment>
          ))}
        </ol>
      </Part>
      <Part name="Mixes">
        <PlanMixes plan={plan} reading={reading} />
      </Part>
    </div>
  );
}

function Part({ name, children }: { name: string; children: ComponentChildren }) {
  return (
    <section>
      <h3 class={styles.part}>{name}</h3>
      {children}
    </section>
  );
}
