import { type ComponentChildren, Fragment } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { cssGrey } from '../../core/colour/lab.ts';
import {
  eveningOf,
  eveningTimes,
  type PlanRow,
  planMinutes,
  planRows,
} from '../../core/plan/evening/evening-times.ts';
import { listMaterials } from '../../core/plan/list-materials.ts';
import { nameWithCode } from '../../core/plan/paint-name-in.ts';
import type { Step, WashPlan } from '../../core/plan/plan.ts';
import { planCautions } from '../../core/plan/steps/step-cautions.ts';
import type { PixelSize } from '../../core/raster/size.ts';
import type { Band, Reading, ToneRange } from '../../core/reading/reading.ts';
import { onTheSheet } from '../../core/reading/tone-range.ts';
import type { Sheet } from '../../core/reference/sheet.ts';
import { minutesInWords } from '../../core/words/minutes.ts';
import { capitalize } from '../../core/words/numbers.ts';
import { eveningName, planTimeInWords } from '../../core/words/plan/evenings.ts';
import { techniqueWindow } from '../../core/words/plan/techniques.ts';
import { brushesInWords } from '../../core/words/plan/tools.ts';
import { words } from '../../core/words/plan/words.ts';
import { bandWord } from '../../core/words/reading-words.ts';
import { sheetInWords } from '../../core/words/reference/sheet.ts';
import { valueInWords } from '../../core/words/values.ts';
import { type SheetMap, sheetLayer } from '../../drawing/layers.ts';
import { Consequence } from '../../ui/mixes/step-parts.tsx';
import { PlanMixes } from './plan-mixes.tsx';
import styles from './plan-sheet.module.css';

interface PlanSheetProps {
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
  const paints = plan.palette.map(nameWithCode).join(', ');
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
        {listMaterials(plan)
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
      <Part name="Mind">
        <ul class={styles.mind}>
          {planCautions(plan).map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
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

interface EveningHeadProps {
  step: Step;
  /** The step printed before it. */
  before: Step | undefined;
}

/** 'Second evening' over its first step, with what becomes of the sheet until then; nothing elsewhere. */
function EveningHead({ step, before }: EveningHeadProps) {
  if (!before || eveningOf(before) === eveningOf(step)) return null;
  return (
    <li class={styles.evening}>
      <h4 class={styles.step}>{eveningName(eveningOf(step))}</h4>
      <p>
        Until then leave the sheet on its board to dry, flat and out of the sun; masking fluid, if
        any, no longer than its label allows.
      </p>
    </li>
  );
}

interface PlanBandsProps {
  bands: readonly Band[];
  /** What the plan's own paints reach: the reading knows only those of the whole box. */
  range: ToneRange;
}

/** Every band by its grey, its word and the value it is to have on the sheet. */
function PlanBands({ bands, range }: PlanBandsProps) {
  return (
    <ul class={styles.bands} aria-label="Values, 0 is black, 10 is white">
      {bands.map(({ band, lightness: own }) => {
        const lightness = onTheSheet(range, own);
        return (
          <li key={band} class={styles.band}>
            <Grey lightness={lightness} />
            {bandWord(band, bands.length)}, {valueInWords(lightness)}
          </li>
        );
      })}
    </ul>
  );
}

/** A square of grey that is printed even where a browser leaves out backgrounds. */
function Grey({ lightness }: { lightness: number }) {
  return (
    <svg class={styles.square} viewBox="0 0 1 1" aria-hidden="true">
      <rect width="1" height="1" fill={cssGrey(lightness)} stroke="#000" stroke-width="0.03" />
    </svg>
  );
}

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
const cutShort = (text: string): string => text.split(/[,:;]/)[0] ?? text;

/** One step: the sheet after it, what is done, on what paper, with which puddles, how long. */
function PlanStage({ row, plan, reading, stage }: PlanStageProps) {
  const { step, wait, changes } = row;
  const puddles = puddlesOf(step, plan);
  const bands = step.bands.map((band) => bandWord(band, reading.bands.length)).join(', ');
  const tools = [
    puddles && `${puddles.includes(',') ? 'puddles' : 'puddle'} ${puddles}`,
    cutShort(brushesInWords(step.brush)[0] ?? ''),
  ].filter(Boolean);
  const facts = [
    step.areas
      ? 'on wetted paper, then on dry'
      : step.technique !== 'none' && `${step.technique} on ${step.paper} paper`,
    bands && `for ${bands}`,
    step.board && `board ${cutShort(words(step.board))}`,
    step.paintMinutes[1] > 0 && minutesInWords(step.paintMinutes),
    wait && wait[1] > 0 && `then dry ${minutesInWords(wait)}, till no coolness is felt`,
  ].filter(Boolean);
  return (
    <li class={styles.stage} data-pictured={changes || undefined}>
      {changes && <StageSheet stage={stage} step={step} />}
      <div>
        <h4 class={styles.step}>
          {step.n}. {words(step.title)}
        </h4>
        {tools.length > 0 && <p class={styles.tools}>{capitalize(tools.join('; '))}</p>}
        <p>{words(step.prompt)}</p>
        {step.soften.length > 0 && <p>{words(step.soften)}</p>}
        {step.touches?.map((touch) => (
          <p key={touch.technique}>
            {words(touch.text).replace(/\.$/, '')} ({techniqueWindow(touch, step.shineMinutes)}).
          </p>
        ))}
        {facts.length > 0 && <p>{capitalize(facts.join('; '))}.</p>}
        <Consequence step={step} />
      </div>
    </li>
  );
}

function StageSheet({ stage, step }: { stage: StageMap; step: Step }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (context) sheetLayer(stage, step)(context);
  }, [stage, step]);
  return <canvas ref={canvas} class={styles.sheet} width={stage.width} height={stage.height} />;
}

/** A slot map small enough for a stage, and how its soft edges run. */
export interface StageMap extends SheetMap, PixelSize {}
