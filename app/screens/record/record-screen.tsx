import '../../styles/print-only.css';
import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { cssColour } from '../../core/colour/lab.ts';
import type { Mix, WashPlan } from '../../core/plan/plan.ts';
import { paintingPhoto } from '../../core/session/attempts.ts';
import { comparedPuddles } from '../../core/session/scrap-verdicts.ts';
import type { SessionEvent } from '../../core/session/session-event.ts';
import type { SessionRecord } from '../../core/session/session-record.ts';
import { momentInWords } from '../../core/words/dates.ts';
import { airInWords, paperInWords } from '../../core/words/drying/drying-words.ts';
import { measuredHours } from '../../core/words/minutes.ts';
import { partsInNumbers } from '../../core/words/paint/mix-words.ts';
import { type Otherwise, wentOtherwise } from '../../core/words/session/otherwise.ts';
import { scrapInWords } from '../../core/words/session/scrap-verdicts.ts';
import { pngFile } from '../../drawing/png-file.ts';
import { drawRecordPicture } from '../../drawing/record-picture.ts';
import { fileWords } from '../../state/backup/hand-out.ts';
import type { RecordCalls } from '../../state/painting/screen-calls.ts';
import { linkTo } from '../../state/router.ts';
import type { Desk } from '../../state/session/desk.ts';
import type { Easel } from '../../state/session/easel.ts';
import type { Keepsakes } from '../../state/session/keepsakes.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { HandOutButtons } from '../../ui/controls/hand-out-buttons.tsx';
import { Fold } from '../../ui/layout/fold.tsx';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import { mixWordsIn } from '../../ui/mixes/mix-words-in.ts';
import { AddNote, AddPhoto } from './add-keepsake.tsx';
import { AttemptRow } from './attempt-row.tsx';
import { ComparedStrip } from './compared-strip.tsx';
import { DryingTable, HistoryTable, StepTable } from './history-table.tsx';
import { KeepsakeFigures, type RecordPictures, useRecordPictures } from './keepsake-figures.tsx';
import { PhotoList } from './photo-list.tsx';
import { inSameWords, type RecordHead, RecordPage } from './record-page.tsx';
import styles from './record-screen.module.css';
import { usePhotoAddress } from './use-photo-address.ts';

interface RecordScreenProps {
  easel: Easel;
  keepsakes: Keepsakes;
  calls: RecordCalls;
  paintingId: string;
  /** An earlier attempt; the last one where it is left out. */
  sessionId?: string | undefined;
}

/** The page she keeps of a painting: the photo, the plan and the painting, what went otherwise; for next time. */
export function RecordScreen(props: RecordScreenProps) {
  const { easel, keepsakes, calls, paintingId, sessionId } = props;
  useEffect(() => void easel.lookBack(paintingId, sessionId), [easel, paintingId, sessionId]);
  const record = easel.record.value;
  const desk = easel.desk.value;
  if (record && desk?.paintingId === paintingId)
    return <Kept key={desk.sessionId} {...{ easel, keepsakes, calls, record, desk }} />;
  return (
    <RecordFrame>
      <p>{easel.problem.value ?? 'No session yet: what you do at the easel will stand here.'}</p>
    </RecordFrame>
  );
}

const RecordFrame = ({ children }: { children: ComponentChildren }) => (
  <main class={styles.page} data-screen="record">
    <header class={styles.top}>
      <TopBar title="Record" back="Paintings" backTo="#/" />
    </header>
    {children}
  </main>
);

interface KeptProps extends Pick<RecordScreenProps, 'easel' | 'keepsakes' | 'calls'> {
  record: SessionRecord;
  desk: Desk;
}

function Kept({ easel, keepsakes, calls, record, desk }: KeptProps) {
  const { plan, sessionId, paintingId } = desk;
  const pictures = useRecordPictures(desk, calls);
  const shown = paintingPhoto(record.photos, record.finishedAt, plan.steps.at(-1)?.key);
  const painting = usePhotoAddress(keepsakes, shown?.photoId ?? null);
  const title = desk.title || 'Painting';
  const head = headOf(record, easel.log.value);
  const otherwise = wentOtherwise(record);
  const onTheWay = record.photos.length > (shown ? 1 : 0);
  const keepsake = { easel, keepsakes, sessionId };
  return (
    <>
      <RecordFrame>
        <section class="stack">
          <h2 class={styles.title}>{title}</h2>
          <p>{head.when}</p>
          <KeepsakeFigures
            pictures={pictures}
            painting={painting.address.value}
            missing={
              shown && !painting.gone.value ? null : (
                <>
                  <p>
                    {record.finishedAt === null
                      ? 'Your painting comes here once it is finished.'
                      : 'Photograph your painting: it belongs here, beside the photo and the plan.'}
                  </p>
                  {record.finishedAt !== null && <AddPhoto {...keepsake} />}
                </>
              )
            }
          />
        </section>
        <section class={`stack ${styles.said}`}>
          <h2 class={styles.heading}>What went differently</h2>
          <OtherwiseList otherwise={otherwise} />
          <h3>What would you do differently next time?</h3>
          <AddNote {...keepsake} />
        </section>
        <ComparedStrip {...{ easel, keepsakes, paintingId }} />
        <AttemptRow
          easel={easel}
          keepsakes={keepsakes}
          paintingId={paintingId}
          current={sessionId}
        />
        <div class={styles.ways}>
          <a class={buttonClass('main', true)} href={linkTo(paintingId, 'easel')}>
            {record.finishedAt === null ? 'Back to the easel' : 'Paint it again'}
          </a>
          {record.finishedAt !== null && (
            <p>
              It goes by the same plan, the mixes as you changed them, and your own drying pace.
            </p>
          )}
          <Button onClick={() => print()}>Print</Button>
          <HandOutButtons
            what="the record as a picture"
            make={() =>
              pictureFiles(
                { title, head, otherwise, pictures },
                { keepsakes, calls },
                shown?.photoId,
              )
            }
          />
        </div>
        <div class={styles.folds}>
          <Fold title="Times">
            <p>{head.air}</p>
            <StepTable steps={record.steps} />
            <DryingTable steps={record.steps} />
          </Fold>
          <Fold title="Mixes">
            <MixList record={record} plan={plan} log={easel.log.value} />
          </Fold>
          {record.photos.length > 0 && (
            <Fold title={onTheWay ? 'Photos on the way' : 'Photos'}>
              <PhotoList record={record} keepsakes={keepsakes} />
              {shown && <AddPhoto {...keepsake} />}
            </Fold>
          )}
          {easel.history.value.rows.length > 0 && (
            <Fold title="Drying times of all paintings">
              <HistoryTable rows={easel.history.value.rows} />
            </Fold>
          )}
        </div>
        <a class={buttonClass('plain', true)} href={linkTo(paintingId, 'plan')}>
          Back to the plan
        </a>
      </RecordFrame>
      <RecordPage
        {...{ title, head, record, plan, otherwise, pictures }}
        painting={painting.address.value}
      />
    </>
  );
}

/** When it was painted and how long it took; and in what air, where she told it. */
function headOf(record: SessionRecord, log: readonly SessionEvent[]): RecordHead {
  const { startedAt, finishedAt, totalMinutes, weather, paper } = record;
  const began = startedAt === null ? '' : `Started ${momentInWords(startedAt)}`;
  const took = measuredHours(totalMinutes);
  const airTold = log.some(({ what }) => what.kind === 'weather');
  const circumstances = `${airInWords(weather)}; ${paperInWords(paper)}.`;
  return {
    when:
      finishedAt === null ? `${began}, under way for ${took}.` : `${began}, finished in ${took}.`,
    air: airTold ? circumstances : `Nothing was said of the air, so taken as: ${circumstances}`,
  };
}

function OtherwiseList({ otherwise }: { otherwise: readonly Otherwise[] }) {
  if (otherwise.length === 0) return <p>Nothing was noted: it went as planned.</p>;
  return (
    <ul class={styles.happened}>
      {otherwise.map(({ words, more }, i) => (
        <li key={`${i} ${words}`}>
          {words}
          {more && (
            <>
              <br />
              <small>{more}</small>
            </>
          )}
        </li>
      ))}
    </ul>
  );
}

interface MixListProps {
  record: SessionRecord;
  plan: WashPlan;
  log: readonly SessionEvent[];
}

function MixList({ record, plan, log }: MixListProps) {
  const scraps = comparedPuddles(log);
  const mixWords = mixWordsIn(plan);
  const inWords = (mix: Mix): string => {
    const { id, puddle, wash, parts, consistency } = mix;
    const figures = parts.length > 1 ? ` (${partsInNumbers(parts)})` : '';
    const changed = record.changedMixes.includes(id) ? ', as you changed it' : '';
    const letter = puddle ? `, ${puddle}` : '';
    return `Wash ${wash}${letter}: ${mixWords(parts)}${figures}, ${consistency}${changed}${scrapInWords(scraps, mix)}`;
  };
  return (
    <ul class={styles.mixes}>
      {inSameWords(record.mixes, inWords).map(([words, mixes]) => (
        <li key={words} class={styles.mix}>
          {mixes.map(({ id, expected }) => (
            <span key={id} class={styles.swatch} style={{ background: cssColour(expected) }} />
          ))}
          <span>{words}</span>
        </li>
      ))}
    </ul>
  );
}

interface Pictured {
  readonly title: string;
  readonly head: RecordHead;
  readonly otherwise: readonly Otherwise[];
  readonly pictures: RecordPictures;
}

/** The record as one picture, a PNG. */
async function pictureFiles(
  { title, head, otherwise, pictures }: Pictured,
  { keepsakes, calls }: Pick<RecordScreenProps, 'keepsakes' | 'calls'>,
  photoId: string | undefined,
): Promise<File[]> {
  const kept = photoId === undefined ? null : await keepsakes.photo(photoId);
  const opened =
    kept &&
    (await calls.openPhoto(
      new AbortController().signal,
      new Blob([kept.bytes], { type: kept.mime }),
    ));
  const painting = opened?.preview;
  const canvas = drawRecordPicture(document.createElement('canvas'), {
    title,
    head: head.when,
    size: pictures.size,
    pictures: [
      { words: 'The photo', draw: pictures.photo },
      ...(pictures.planned ? [{ words: 'As planned', draw: pictures.planned }] : []),
      ...(painting ? [{ words: 'The painting', draw: painting }] : []),
    ],
    lines: otherwise.map(({ words }) => words),
  });
  painting?.close();
  return pngFile(canvas, `${fileWords(title)} record`);
}
