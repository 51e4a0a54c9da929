import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { cssColour, type Lab } from '../../core/colour/lab.ts';
import type { ScrapHue, ScrapVerdict } from '../../core/paint/paint-at-fault.ts';
import type { StrengthLesson } from '../../core/paint/strength-corrections.ts';
import { paintNameIn } from '../../core/plan/paint-name-in.ts';
import { type Mix, type Step, surfaceOf } from '../../core/plan/plan.ts';
import {
  comparedPuddles,
  isSamePuddle,
  scrapLessons,
  scrapPuddles,
  tellingTry,
  verdictOf,
} from '../../core/session/scrap-verdicts.ts';
import { joinWords } from '../../core/words/numbers.ts';
import { lessonInWords } from '../../core/words/paint/strength-corrections.ts';
import { lastTimeWords } from '../../core/words/session/scrap-verdicts.ts';
import type { ScrapCalls } from '../../state/painting/screen-calls.ts';
import { learnStrengths } from '../../state/paints/learn-strengths.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import type { Desk } from '../../state/session/desk.ts';
import type { Easel } from '../../state/session/easel.ts';
import { Button } from '../../ui/controls/button.tsx';
import { mixWordsIn } from '../../ui/mixes/mix-words-in.ts';
import { PressButton } from '../../ui/pointer/press-button.tsx';
import styles from './scrap-compare.module.css';

type Depth = NonNullable<ScrapVerdict['depth']>;

const depths: readonly (readonly [Depth, string])[] = [
  ['weaker', 'Too pale'],
  ['right', 'Right'],
  ['stronger', 'Too strong'],
];

const hues: readonly ScrapHue[] = ['red', 'yellow', 'green', 'blue', 'dull'];

const depthAdvice: Readonly<Record<Depth, string>> = {
  weaker: 'More paint, then brush it again.',
  right: 'Right: it dries as planned.',
  stronger: 'More water, then brush it again.',
};

interface ScrapCompareProps {
  easel: Easel;
  ownBox: OwnBoxState;
  calls: ScrapCalls;
  desk: Desk;
  step: Step;
}

/** Every puddle held dry against its swatch, one at a time: its depth, and what its colour has too much of. */
export function ScrapCompare({ easel, ownBox, calls, desk, step }: ScrapCompareProps) {
  const shown = useSignal<string | null>(null);
  const { mixes = [] } = easel.record.value ?? {};
  const scraps = comparedPuddles(easel.log.value);
  const puddles = scrapPuddles(mixes.filter(({ id }) => step.mixes.includes(id)));
  const isOpen = (puddle: (typeof puddles)[number]): boolean => verdictOf(scraps, puddle) === null;
  const puddle =
    puddles.find(({ name }) => name === shown.value) ?? puddles.find(isOpen) ?? puddles[0];
  const noPaint = useLearning({ easel, ownBox, calls });
  const onScrap = useScrapColour(calls, desk, puddle?.mix);
  const advice = useRef<HTMLDivElement>(null);
  const tapped = useRef(false);
  // On a phone what her verdict means comes below what is seen.
  useEffect(() => {
    if (tapped.current) advice.current?.scrollIntoView({ block: 'nearest' });
  });
  if (!puddle) return null;
  const puddleIndex = puddles.indexOf(puddle);
  const verdict = verdictOf(scraps, puddle) ?? { depth: null, hue: null };
  const tell = ({ depth, hue }: ScrapVerdict): void => {
    const { parts, load } = puddle;
    tapped.current = true;
    // Stays where there is something to do about it.
    shown.value = depth === 'right' && verdict.depth !== 'right' ? null : puddle.name;
    easel.tell({ kind: 'scrap', parts, load, verdict: depth, ...(hue && { hue }) });
  };
  const tellDepth = (told: Depth): void => {
    const depth = told === verdict.depth ? null : told;
    tell({ depth, hue: depth === 'right' ? null : verdict.hue });
  };
  const tellHue = (told: ScrapHue): void => {
    const hue = told === verdict.hue ? null : told;
    tell({ depth: hue && verdict.depth === 'right' ? null : verdict.depth, hue });
  };
  const compared = scraps.find((each) => isSamePuddle(each, puddle));
  const telling = compared ? tellingTry(compared) : null;
  const lessons = ownBox.box.value.strengthLessons ?? [];
  const lesson = lessons.find(({ event }) => event === telling?.event);
  const lastTime = compared ? null : lastTimeWords(scrapLessons(easel.earlier.value), puddle);
  const names = puddle.parts.map(({ paint }) => paintNameIn(desk.plan)(paint));

  return (
    <section class={styles.scrap} aria-label="Compare on a scrap" data-testid="scrap">
      <div class={styles.head}>
        <span
          class={styles.swatch}
          style={{ background: cssColour(onScrap ?? puddle.mix.expected) }}
          aria-hidden="true"
        />
        <p class={styles.words}>
          <strong>
            {puddle.name}, {mixWordsIn(desk.plan)(puddle.parts)}
          </strong>
          : on the dry scrap it looks
        </p>
      </div>
      {puddles.length > 1 && (
        <div class={styles.next}>
          <Button
            onClick={() => {
              tapped.current = false;
              shown.value = puddles[(puddleIndex + 1) % puddles.length]?.name ?? null;
            }}
          >
            <span class="spoken">Puddle </span>
            {puddleIndex + 1} of {puddles.length}
            <br />
            next
          </Button>
        </div>
      )}
      <div class={styles.choices}>
        {depths.map(([value, name]) => (
          <PressButton key={value} pressed={value === verdict.depth} onAct={() => tellDepth(value)}>
            {name}
          </PressButton>
        ))}
      </div>
      <div class={styles.hues}>
        {hues.map((hue) => (
          <PressButton key={hue} pressed={hue === verdict.hue} onAct={() => tellHue(hue)}>
            Too {hue}
          </PressButton>
        ))}
      </div>
      <div ref={advice} class={styles.advice} role="status">
        {lastTime && <p>{lastTime}</p>}
        {verdict.depth && <p>{depthAdvice[verdict.depth]}</p>}
        {verdict.hue && <p>{hueAdvice(names, lesson)}</p>}
        {telling && verdict.depth !== 'right' && (
          <p>
            {noPaint.includes(telling.event) ? unexplained : lessonInWords(lessons, telling.event)}
          </p>
        )}
      </div>
    </section>
  );
}

const unexplained = 'The strength of one paint does not explain that: nothing is kept.';

/** What to do to the puddle now. */
function hueAdvice(names: readonly string[], lesson: StrengthLesson | undefined): string | null {
  if (names.length === 1)
    return 'A paint by itself keeps its hue, strong or weak: measure it from a photo, in your box.';
  if (!lesson) return null;
  const wanted = names.filter((name) => (name === lesson.name) === (lesson.seems === 'weaker'));
  return `Add a little more ${joinWords(wanted)}, then brush it again.`;
}

/** Keeps her box in step with what the scraps tell; answers for which of them no paint is at fault. */
function useLearning(needs: Pick<ScrapCompareProps, 'easel' | 'ownBox' | 'calls'>) {
  const noPaint = useSignal<readonly string[]>([]);
  const { value: log } = needs.easel.log;
  useEffect(() => {
    learnStrengths(needs).then(
      (events) => {
        noPaint.value = events;
      },
      () => undefined, // asked again at the next tap
    );
  }, [log]);
  return noPaint.value;
}

/** The first wash dries on the scrap as on the sheet; a later one lies over others there, and here by itself. */
function useScrapColour(calls: ScrapCalls, { plan }: Desk, mix: Mix | undefined): Lab | null {
  const found = useSignal<{ readonly mix: Mix; readonly dry: Lab } | null>(null);
  useEffect(() => {
    if (!mix || mix.wash === 1) return;
    const controller = new AbortController();
    calls.lookAtScrap(controller.signal, plan.optics, mix, null, [], surfaceOf(plan)).then(
      ({ dry }) => {
        if (!controller.signal.aborted) found.value = { mix, dry };
      },
      () => undefined, // the colour on the sheet stays
    );
    return () => controller.abort();
  }, [calls, plan, mix?.id, mix?.load]);
  return found.value && found.value.mix.id === mix?.id ? found.value.dry : null;
}
