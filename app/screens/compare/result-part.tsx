import type { ComponentChildren } from 'preact';
import { cssColour, type Lab } from '../../core/colour/lab.ts';
import type { Advice, JudgedComparison } from '../../core/compare/comparison.ts';
import { paintNameIn } from '../../core/plan/paint-name-in.ts';
import type { Step } from '../../core/plan/plan.ts';
import {
  adviceInWords,
  bandVerdictInWords,
  edgeVerdictInWords,
  headlineOf,
  lostWhitesInWords,
  roomInWords,
  surenessInWords,
  tipInWords,
  verdictInWords,
  wholeInWords,
} from '../../core/words/compare/compare-words.ts';
import { partsInNumbers } from '../../core/words/paint/mix-words.ts';
import { mendingTitles } from '../../core/words/plan/mending.ts';
import { words } from '../../core/words/plan/words.ts';
import type { AdviceTaking } from '../../state/session/advice-taking.ts';
import type { Desk } from '../../state/session/desk.ts';
import { Button } from '../../ui/controls/button.tsx';
import page from './compare-screen.module.css';
import styles from './result-part.module.css';

interface ResultPanelProps {
  desk: Desk;
  comparison: JudgedComparison;
  step: Step | null;
  /** The advice shown on the picture. */
  shown: ShownAdvice | null;
  onShow: (shown: ShownAdvice | null) => void;
  /** What the picture shows, and how. */
  choices: ComponentChildren;
  /** Left out where nothing can be taken. */
  takes?: AdviceTaking | undefined;
}

/** By its place in the list: where it is, or what it would look like. */
export interface ShownAdvice {
  readonly n: number;
  readonly as: 'where' | 'then';
}

/** The verdict first, then what is worth doing, then what was seen. */
export function ResultPanel(props: ResultPanelProps) {
  const { desk, comparison, step, shown, onShow, choices, takes } = props;
  const { plan, seen } = desk;
  const { reading } = seen;
  const { advice, bands, edges, shapes, tips, place } = comparison;
  const off = shapes.filter(({ verdict, drift }) => verdict !== 'same' || drift.length > 0);
  const lost = lostWhitesInWords(comparison.whites);
  return (
    <div class={page.panel}>
      <section class="stack">
        <h2 class={styles.verdict} data-testid="verdict">
          {headlineOf(comparison)}
        </h2>
        <p>
          After {words(step?.title ?? 'this step')}: {wholeInWords(comparison)}
        </p>
        <p>{roomInWords(comparison)}</p>
      </section>
      {advice.length > 0 && (
        <ol class={styles.advice}>
          {advice.map((each, n) => (
            <AdviceItem
              key={n}
              {...{ desk, takes }}
              advice={each}
              shown={shown?.n === n ? shown.as : null}
              onShow={(as) => onShow(as && { n, as })}
            />
          ))}
        </ol>
      )}
      <section class="stack">
        <h3>Ways to look</h3>
        {choices}
      </section>
      <section class="stack">
        <h3>Values</h3>
        <ul class={styles.bands}>
          {bands.map((band) => (
            <li key={band.band}>
              <span class={styles.pair} aria-hidden="true">
                <span style={{ background: cssColour([band.expected, 0, 0]) }} />
                <span style={{ background: cssColour([band.measured, 0, 0]) }} />
              </span>
              {bandVerdictInWords(band, reading.bands.length)}
            </li>
          ))}
        </ul>
        <p class="quiet">Planned beside painted, in grey.</p>
      </section>
      {lost.length > 0 && <Sentences title="Whites" sentences={lost} />}
      {edges.length > 0 && <Sentences title="Edges" sentences={edges.map(edgeVerdictInWords)} />}
      {off.length > 0 && (
        <details>
          <summary class={page.summary}>Shape by shape</summary>
          <Sentences sentences={off.map((shape) => verdictInWords(shape, plan, reading))} />
        </details>
      )}
      <section class="stack">
        <h3>The photo</h3>
        <p>{surenessInWords(place)}</p>
        <ul class={page.tips}>
          {tips.map((tip) => (
            <li key={tip}>{tipInWords(tip)}</li>
          ))}
        </ul>
      </section>
    </div>
  );
}

function Sentences({ title, sentences }: { title?: string; sentences: readonly string[] }) {
  return (
    <section class="stack">
      {title && <h3>{title}</h3>}
      <ul class={page.tips}>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}

interface AdviceItemProps extends Pick<ResultPanelProps, 'desk' | 'takes'> {
  advice: Advice;
  shown: ShownAdvice['as'] | null;
  onShow: (as: ShownAdvice['as'] | null) => void;
}

/** One thing worth doing: what, where, with which puddle, and what it would look like. */
function AdviceItem({ desk, takes, advice, shown, onShow }: AdviceItemProps) {
  const { plan, seen } = desk;
  const { mending, measured, predicted, expected, parts, consistency } = advice;
  const isPaint = advice.shapes.length > 0;
  return (
    <li class={styles.item}>
      <h3>{mendingTitles[mending]}</h3>
      <p>{adviceInWords(advice, plan, seen.reading)}</p>
      {parts && parts.length > 0 && (
        <p class={styles.puddle}>
          <PartsBar desk={desk} parts={parts} />
          <span>
            {parts.length > 1 ? `Parts ${partsInNumbers(parts)}` : 'One paint'}
            {consistency && `, as thick as ${consistency}`}
          </span>
        </p>
      )}
      {isPaint && mending !== 'leave-as-is' && (
        <div class={styles.looks} data-testid="looks">
          <Look lab={measured} words="now" />
          <Look lab={predicted} words="then" />
          <Look lab={expected} words="planned" />
        </div>
      )}
      <p role="status">{takes?.taken(advice) && takenWords(advice)}</p>
      <div class={styles.row}>
        <Button
          aria-pressed={shown === 'where'}
          onClick={() => onShow(shown === 'where' ? null : 'where')}
        >
          Show where
        </Button>
        {isPaint && mending !== 'leave-as-is' && (
          <Button
            aria-pressed={shown === 'then'}
            onClick={() => onShow(shown === 'then' ? null : 'then')}
          >
            See it mended
          </Button>
        )}
        {takes &&
          mending !== 'leave-as-is' &&
          (takes.taken(advice) ? (
            <Button onClick={() => takes.leaveOut(advice)}>Take it out again</Button>
          ) : (
            <Button look="main" onClick={() => takes.take(advice)}>
              Take it into the plan
            </Button>
          ))}
      </div>
    </li>
  );
}

const takenWords = ({ step }: Advice): string =>
  step === undefined
    ? 'It stands in the plan of this sheet as the next step, and later steps follow from it.'
    : 'It stands in the plan of this sheet with that wash, and later steps follow from it.';

const Look = ({ lab, words }: { lab: Lab; words: string }) => (
  <span class={styles.look}>
    <span class={styles.swatch} style={{ background: cssColour(lab) }} />
    {words}
  </span>
);

interface PartsBarProps {
  desk: Desk;
  parts: NonNullable<Advice['parts']>;
}

/** The paints of a puddle as a bar whose lengths are the parts. */
function PartsBar({ desk, parts }: PartsBarProps) {
  const nameOf = paintNameIn(desk.plan);
  return (
    <span class={styles.parts}>
      {[...parts]
        .sort((one, two) => two.parts - one.parts)
        .map(({ paint, parts: share }) => (
          <span key={paint} style={{ flex: share }}>
            {nameOf(paint)}
          </span>
        ))}
    </span>
  );
}
