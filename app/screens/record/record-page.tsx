import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { cssColour } from '../../core/colour/lab.ts';
import type { Mix, WashPlan } from '../../core/plan/plan.ts';
import type { SessionRecord } from '../../core/session/session-record.ts';
import { measuredMinutes } from '../../core/words/minutes.ts';
import type { Otherwise } from '../../core/words/session/otherwise.ts';
import printed from '../../styles/printed-page.module.css';
import { useFittingType } from '../../ui/layout/use-fitting-type.ts';
import { mixWordsIn } from '../../ui/mixes/mix-words-in.ts';
import { KeepsakeFigures, type RecordPictures } from './keepsake-figures.tsx';
import styles from './record-page.module.css';

export interface RecordHead {
  /** When it was begun, how long it took. */
  readonly when: string;
  /** The air and the paper. */
  readonly air: string;
}

interface RecordPageProps {
  title: string;
  head: RecordHead;
  record: SessionRecord;
  plan: WashPlan;
  otherwise: readonly Otherwise[];
  pictures: RecordPictures;
  painting: string | null;
}

/** Mixes told in the same words stand together, each with its colour; in the order of the first. */
export function inSameWords(
  mixes: readonly Mix[],
  inWords: (mix: Mix) => string,
): [words: string, mixes: Mix[]][] {
  const told = new Map<string, Mix[]>();
  for (const mix of mixes) {
    const words = inWords(mix);
    told.set(words, [...(told.get(words) ?? []), mix]);
  }
  return [...told];
}

/** The record as it is printed: one page to keep with the painting. Lengths are of the page, --type makes all smaller. */
export function RecordPage(props: RecordPageProps) {
  const { title, head, record, plan, otherwise, pictures, painting } = props;
  const page = useRef<HTMLDivElement>(null);
  const type = useFittingType(page, `${painting} ${otherwise.length} ${record.mixes.length}`);
  const done = record.steps.filter(
    ({ kind, paintedMinutes, waitedMinutes }) =>
      (kind !== 'dry' && paintedMinutes > 0) || (kind === 'dry' && waitedMinutes > 0),
  );
  const mixWords = mixWordsIn(plan);
  const inWords = ({ puddle, parts, consistency }: Mix): string =>
    `${puddle ? `${puddle}: ` : ''}${mixWords(parts)}, ${consistency}`;
  return (
    <div data-print="laid" aria-hidden="true">
      <div ref={page} class={printed.page} data-testid="record-page">
        <div class={styles.content} style={{ '--type': type }}>
          <h2 class={styles.title}>{title}</h2>
          <p>{head.when}</p>
          <KeepsakeFigures pictures={pictures} painting={painting} />
          {otherwise.length > 0 && (
            <Part name="What went differently">
              <ul class={styles.list}>
                {otherwise.map(({ words, more }) => (
                  <li key={words}>
                    {words} <small>{more}</small>
                  </li>
                ))}
              </ul>
            </Part>
          )}
          <Part name="Mixes">
            <ul class={styles.mixes}>
              {inSameWords(record.mixes, inWords).map(([words, mixes]) => (
                <li key={words} class={styles.mix}>
                  {mixes.map(({ id, expected }) => (
                    <span
                      key={id}
                      class={styles.swatch}
                      style={{ background: cssColour(expected) }}
                    />
                  ))}
                  <span>{words}</span>
                </li>
              ))}
            </ul>
          </Part>
          <Part name="Times">
            <p>{head.air}</p>
            <p>
              {done
                .map(
                  ({ kind, title: step, paintedMinutes, waitedMinutes }) =>
                    `${step} ${measuredMinutes(kind === 'dry' ? waitedMinutes : paintedMinutes)}`,
                )
                .join('; ')}
            </p>
          </Part>
        </div>
      </div>
    </div>
  );
}

const Part = ({ name, children }: { name: string; children: ComponentChildren }) => (
  <section>
    <h3 class={styles.part}>{name}</h3>
    {children}
  </section>
);
