import { useSignal } from '@preact/signals';
import { cssColour } from '../../core/colour/lab.ts';
import { partsInWords } from '../../core/paint/mix-words.ts';
import type { Step } from '../../core/plan/plan.ts';
import {
  comparedPuddles,
  lastTimeWords,
  type ScrapVerdict,
  scrapLessons,
  scrapPuddles,
  verdictOf,
} from '../../core/session/scrap-verdicts.ts';
import type { Desk, Easel } from '../../state/session/easel.ts';
import { Button } from '../../ui/controls/button.tsx';
import { PressButton } from '../../ui/pointer/press-button.tsx';
import styles from './scrap-compare.module.css';

const verdicts: readonly (readonly [ScrapVerdict, string])[] = [
  ['weaker', 'Weaker'],
  ['right', 'Right'],
  ['stronger', 'Stronger'],
];

const advice: Readonly<Record<ScrapVerdict, string>> = {
  weaker: 'More paint, then brush it again.',
  right: 'Right: it dries as planned.',
  stronger: 'More water, then brush it again.',
};

interface ScrapCompareProps {
  easel: Easel;
  desk: Desk;
  step: Step;
}

/** Every puddle held dry against its swatch, one at a time: weaker, right or stronger. */
export function ScrapCompare({ easel, desk, step }: ScrapCompareProps) {
  const shown = useSignal<string | null>(null);
  const { mixes = [] } = easel.record.value ?? {};
  const scraps = comparedPuddles(easel.log.value);
  const puddles = scrapPuddles(mixes.filter(({ id }) => step.mixes.includes(id)));
  const isOpen = (puddle: (typeof puddles)[number]): boolean => verdictOf(scraps, puddle) === null;
  const puddle =
    puddles.find(({ name }) => name === shown.value) ?? puddles.find(isOpen) ?? puddles[0];
  if (!puddle) return null;
  const puddleIndex = puddles.indexOf(puddle);
  const verdict = verdictOf(scraps, puddle);
  const nameOf = (paint: string): string =>
    desk.plan.palette.find(({ id }) => id === paint)?.name ?? paint;
  const tell = (told: ScrapVerdict): void => {
    const { parts, load } = puddle;
    // Stays where there is something to do about it.
    shown.value = told === 'right' && verdict !== 'right' ? null : puddle.name;
    easel.tell({ kind: 'scrap', parts, load, verdict: told === verdict ? null : told });
  };
  return (
    <section class={styles.scrap} aria-label="Compare on a scrap" data-testid="scrap">
      <div class={styles.head}>
        <span
          class={styles.swatch}
          style={{ background: cssColour(puddle.mix.expected) }}
          aria-hidden="true"
        />
        <p class={styles.words}>
          <strong>{partsInWords(puddle.parts, nameOf)}</strong>, dry on the scrap, is
        </p>
      </div>
      {puddles.length > 1 && (
        <div class={styles.next}>
          <Button
            onClick={() => {
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
        {verdicts.map(([value, name]) => (
          <PressButton key={value} pressed={value === verdict} onAct={() => tell(value)}>
            {name}
          </PressButton>
        ))}
      </div>
      <p class={styles.advice} role="status">
        {verdict ? advice[verdict] : lastTimeWords(scrapLessons(easel.earlier.value), puddle)}
      </p>
    </section>
  );
}
