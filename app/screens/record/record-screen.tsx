import { useEffect } from 'preact/hooks';
import { cssColour } from '../../core/colour/lab.ts';
import { paperInWords } from '../../core/drying/paper-choice.ts';
import { airInWords } from '../../core/drying/weather.ts';
import { partsInNumbers } from '../../core/paint/mix-words.ts';
import { mixWordsIn } from '../../core/plan/paint-name-in.ts';
import { comparedPuddles, scrapInWords } from '../../core/session/scrap-verdicts.ts';
import type { SessionRecord, StepRecord } from '../../core/session/session-record.ts';
import { measuredHours, measuredMinutes, minutesInWords } from '../../core/words/minutes.ts';
import { linkTo } from '../../state/router.ts';
import type { Easel } from '../../state/session/easel.ts';
import type { Keepsakes } from '../../state/session/keepsakes.ts';
import { buttonClass } from '../../ui/controls/button.tsx';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import { ComparedStrip } from './compared-strip.tsx';
import { DryingTable, HistoryTable } from './history-table.tsx';
import { PhotoList } from './photo-list.tsx';
import styles from './record-screen.module.css';

/** A drying check is planned by how long the wash before it dries. */
function plannedWords(
  { kind, n, plannedMinutes }: StepRecord,
  steps: readonly StepRecord[],
): string {
  const wet = steps.findLast((step) => step.n < n && step.plannedDryMinutes[1] > 0);
  const planned = (kind === 'dry' && wet?.plannedDryMinutes) || plannedMinutes;
  return planned[1] > 0 ? minutesInWords(planned) : '–';
}

interface RecordScreenProps {
  easel: Easel;
  keepsakes: Pick<Keepsakes, 'photo' | 'keepSetting'>;
  paintingId: string;
}

/** What was done, how long it took, which mixes: for next time. */
export function RecordScreen({ easel, keepsakes, paintingId }: RecordScreenProps) {
  useEffect(() => void easel.lookBack(paintingId), [easel, paintingId]);
  const record = easel.record.value;
  const plan = easel.desk.value?.plan;
  const scraps = comparedPuddles(easel.log.value);
  return (
    <main class={styles.page} data-screen="record">
      <header class={styles.top}>
        <TopBar title="Record" back="Paintings" backTo="#/" />
      </header>
      {!record || !plan ? (
        <p>{easel.problem.value ?? 'No session yet: what you do at the easel will stand here.'}</p>
      ) : (
        <>
          <section class="stack">
            <h2 class={styles.heading}>
              {record.finishedAt ? 'Finished' : 'Under way'}, {measuredHours(record.totalMinutes)}
            </h2>
            {record.startedAt && (
              <p>
                Begun{' '}
                {new Date(record.startedAt).toLocaleString(undefined, {
                  dateStyle: 'long',
                  timeStyle: 'short',
                })}
                .
              </p>
            )}
            <p>
              {airInWords(record.weather)}; {paperInWords(record.paper)}.
            </p>
          </section>
          <section class="stack">
            <h2 class={styles.heading}>Steps</h2>
            <table class={styles.table}>
              <thead>
                <tr>
                  <th scope="col">Step</th>
                  <th scope="col">Planned</th>
                  <th scope="col">Painted</th>
                  <th scope="col">Waited</th>
                </tr>
              </thead>
              <tbody>
                {record.steps.map((step) => (
                  <tr key={step.key} data-done={step.done || undefined}>
                    <th scope="row">
                      {step.n}. {step.title}
                      {!step.done && ' (not done)'}
                    </th>
                    <td data-name="Planned">{plannedWords(step, record.steps)}</td>
                    <td data-name="Painted">
                      {step.paintedMinutes > 0 ? measuredMinutes(step.paintedMinutes) : '–'}
                    </td>
                    <td data-name="Waited">
                      {step.waitedMinutes > 0 ? measuredMinutes(step.waitedMinutes) : '–'}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
          <DryingTable steps={record.steps} />
          <HappenedList record={record} />
          <ComparedStrip {...{ easel, keepsakes, paintingId }} />
          <PhotoList record={record} keepsakes={keepsakes} />
          <section class="stack">
            <h2 class={styles.heading}>Mixes</h2>
            <ul class={styles.mixes}>
              {record.mixes.map((mix) => (
                <li key={mix.id} class={styles.mix}>
                  <span class={styles.swatch} style={{ background: cssColour(mix.expected) }} />
                  <span>
                    Wash {mix.wash}: {mixWordsIn(plan)(mix.parts)}
                    {mix.parts.length > 1 && ` (${partsInNumbers(mix.parts)})`}, {mix.consistency}
                    {record.changedMixes.includes(mix.id) && ', as you changed it'}
                    {scrapInWords(scraps, mix)}
                  </span>
                </li>
              ))}
            </ul>
          </section>
          <HistoryTable rows={easel.history.value.rows} />
          {record.finishedAt !== null && (
            <p>
              Painted again, it goes by the same plan, by the mixes as you changed them, and by your
              own drying pace.
            </p>
          )}
          <a class={buttonClass('main', true)} href={linkTo(paintingId, 'easel')}>
            {record.finishedAt === null ? 'Back to the easel' : 'Paint it again'}
          </a>
          <a class={buttonClass('plain', true)} href={linkTo(paintingId, 'plan')}>
            Back to the plan
          </a>
        </>
      )}
    </main>
  );
}

const formatMinutes = (minutes: number): string => `${Math.round(minutes)} min`;

/** What went wrong with what was advised, what was practised, what she noted. */
function HappenedList({ record }: { record: SessionRecord }) {
  const { troubles, notes, practised, steps } = record;
  const titleOf = (key: string): string => steps.find((step) => step.key === key)?.title ?? '';
  if (troubles.length + notes.length + practised.length === 0) return null;
  return (
    <section class="stack">
      <h2 class={styles.heading}>What happened</h2>
      <ul class={styles.happened}>
        {troubles.map(({ atMinutes, stepKey, words, wetness, remedy }) => (
          <li key={`${atMinutes} ${words}`}>
            <strong>{words}</strong>, {titleOf(stepKey)}, after {formatMinutes(atMinutes)}, sheet{' '}
            {wetness}.
            <br />
            <small>{remedy}</small>
          </li>
        ))}
        {practised.map((key) => (
          <li key={key}>Practised on a scrap: {titleOf(key)}.</li>
        ))}
        {notes.map(({ atMinutes, text }) => (
          <li key={`${atMinutes} ${text}`}>
            After {formatMinutes(atMinutes)}: {text}
          </li>
        ))}
      </ul>
    </section>
  );
}
