import { useMemo } from 'preact/hooks';
import { familyNameIn } from '../../core/plan/family-name-in.ts';
import { findMeanwhile } from '../../core/session/meanwhile.ts';
import { calendarFile } from '../../core/session/wait-calendar.ts';
import { timeInWords } from '../../core/words/dates.ts';
import { formatCount } from '../../core/words/numbers.ts';
import { words } from '../../core/words/plan/words.ts';
import { reachInShort, reachInWords } from '../../core/words/session/reach-words.ts';
import { minutesUp } from '../../core/words/session/wait-words.ts';
import { createHandOut } from '../../state/backup/hand-out.ts';
import type { Desk } from '../../state/session/desk.ts';
import type { Easel } from '../../state/session/easel.ts';
import type { EaselSenses } from '../../state/session/easel-senses.ts';
import { Button } from '../../ui/controls/button.tsx';
import { PuddleRow } from '../../ui/mixes/puddle-row.tsx';
import { PressButton } from '../../ui/pointer/press-button.tsx';
import { PractisePanel } from './practise-panel.tsx';
import styles from './wait-panel.module.css';

interface ReachPanelProps {
  easel: Pick<Easel, 'time' | 'desk' | 'session'>;
  senses: EaselSenses;
}

/** The dark face, and what will call her: what is in force in one line, all of it and what else can be had behind it. */
export function ReachPanel({ easel, senses }: ReachPanelProps) {
  const reach = senses.reach.value;
  const { drying, wallMs } = easel.time.value;
  if (!drying) return null;
  const inMs = drying.lowMs;
  const fromMs = wallMs + inMs;
  const hears = reach.sound === 'on' || reach.sound === 'tap';
  return (
    <div class={styles.reach}>
      <Button onClick={senses.rest}>Let the screen rest</Button>
      <details>
        <summary class={styles.open}>{reachInShort(reach)}</summary>
        <div class="stack" data-testid="reach">
          <ul class={styles.items}>
            {reachInWords(reach).map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          {hears && reach.alarm !== 'missing' && (
            <Button onClick={() => senses.callWithScreenOff(reach.alarm !== 'on')}>
              {reach.alarm === 'on'
                ? 'Stop the sound that plays on'
                : 'Call me with the screen off'}
            </Button>
          )}
          {hears && reach.alarm !== 'missing' && reach.alarm !== 'on' && (
            <p class="quiet">Music from another app may stop meanwhile.</p>
          )}
          {reach.notice === 'unasked' && (
            <Button onClick={senses.askForNotices}>Show a notice too</Button>
          )}
          {inMs > 0 && (
            <>
              <p>
                To be quite sure, set your phone’s own timer to{' '}
                <strong>{formatCount(minutesUp(inMs), 'minute')}</strong>, or put{' '}
                {timeInWords(fromMs)} into your calendar.
              </p>
              <CalendarButton easel={easel} fromMs={fromMs} untilMs={wallMs + drying.highMs} />
            </>
          )}
        </div>
      </details>
    </div>
  );
}

interface CalendarButtonProps {
  easel: Pick<Easel, 'time' | 'desk' | 'session'>;
  fromMs: number;
  untilMs: number;
}

/** An entry for the calendar of the device, as a file that it opens. */
function CalendarButton({ easel, fromMs, untilMs }: CalendarButtonProps) {
  const handOut = useMemo(() => createHandOut(window), []);
  function save(): void {
    const { timer } = easel.session.peek();
    const { plan, sessionId = '' } = easel.desk.peek() ?? {};
    const washed = words(plan?.steps.find(({ key }) => key === timer?.key)?.title);
    const text = calendarFile({
      id: `${sessionId}-${Math.round(timer?.endsLowMs ?? 0)}`,
      title: washed ? `Look at the sheet: ${washed}` : 'Look at the sheet',
      fromMs,
      untilMs,
      madeMs: easel.time.peek().wallMs,
    });
    void handOut.save(new File([text], 'look at the sheet.ics', { type: 'text/calendar' }));
  }
  return <Button onClick={save}>Calendar entry for {timeInWords(fromMs)}</Button>;
}

interface MeanwhileListProps {
  easel: Easel;
  desk: Desk;
  /** Shows the edges over the picture. */
  onEdges: () => void;
}

/** What can be done while the sheet dries: elsewhere on it, at the palette, on a scrap, with the eyes. */
export function MeanwhileList({ easel, desk, onEdges }: MeanwhileListProps) {
  const { plan, seen } = desk;
  const { elsewhere, mixFor } = findMeanwhile(
    plan.steps,
    seen.reading.borders,
    easel.session.value,
  );
  const stepOf = (key: string | null) => plan.steps.find((step) => step.key === key);
  const next = stepOf(mixFor);
  return (
    <section class={styles.list} aria-label="While it dries" data-testid="meanwhile">
      <h2 class={styles.name}>While it dries</h2>
      <ul class={styles.items}>
        {elsewhere.slice(0, 3).map((key) => (
          <li key={key}>
            <PressButton
              onAct={() => easel.tell({ kind: 'step-begun', key, aside: true })}
            >{`Paint elsewhere: ${words(stepOf(key)?.title)}`}</PressButton>
          </li>
        ))}
        {elsewhere.length === 0 && (
          <li>Nothing else can be painted: all that is left touches the wet.</li>
        )}
        {next && (
          <li class="stack">
            <span>Mix the puddles for: {words(next.title)}.</span>
            <PuddleRow
              mixes={plan.mixes.filter(({ id }) => next.mixes.includes(id))}
              familyName={familyNameIn(plan, seen.reading)}
              plan={plan}
            />
          </li>
        )}
        <li>
          <button type="button" class={styles.look} onClick={onEdges}>
            Look at the edges to come
          </button>
        </li>
      </ul>
      <PractisePanel easel={easel} />
    </section>
  );
}
