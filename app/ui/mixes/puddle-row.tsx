import { cssColour, type Lab } from '../../core/colour/lab.ts';
import type { Part } from '../../core/paint/mix.ts';
import type { Mark } from '../../core/plan/details/mark.ts';
import type { Mix, WashPlan } from '../../core/plan/plan.ts';
import { formatCount } from '../../core/words/numbers.ts';
import { partsInNumbers } from '../../core/words/paint/mix-words.ts';
import { mixWordsIn } from './mix-words-in.ts';
import styles from './puddle-row.module.css';

interface PuddleRowProps {
  mixes: readonly Mix[];
  /** What is set with the point of the brush: their colours are shown, not those of the washes. */
  marks?: readonly Mark[];
  /** Family id -> what it is called. */
  familyName: (family: number) => string;
  /** With it each puddle has a line of its own, and what it is mixed of. */
  plan?: Pick<WashPlan, 'palette' | 'optics'>;
}

/** What is set with some mixes of one puddle. */
const setWith = (uses: readonly Mix[], marks: readonly Mark[]): readonly Mark[] =>
  marks.filter(({ mix }) => uses.some(({ id }) => id === mix));

/** The colours some mixes of one puddle dry to: of the marks set with it the darkest, else thin to strong. */
export function coloursOf(uses: readonly Mix[], marks: readonly Mark[]): readonly Lab[] {
  const set = setWith(uses, marks).map(({ lab }) => lab);
  if (set.length > 0) return [set.reduce((dark, lab) => (lab[0] < dark[0] ? lab : dark))];
  return uses.flatMap(({ weaker, expected }) =>
    weaker ? [weaker.expected, expected] : [expected],
  );
}

/** 'mostly ultramarine blue, a touch of burnt sienna, 5 : 1': by the figures no two puddles read alike. */
export const partsSaid = (
  parts: readonly Part[],
  inWords: (parts: readonly Part[]) => string,
): string => (parts.length > 1 ? `${inWords(parts)}, ${partsInNumbers(parts)}` : inWords(parts));

/** The puddles of a step at one glance: letter, the colours they dry to on the sheet, and what it is for. */
export function PuddleRow({ mixes, marks = [], familyName, plan }: PuddleRowProps) {
  const mixWords = plan && mixWordsIn(plan);
  const puddles = new Map<string, Mix[]>();
  for (const mix of mixes)
    if (mix.puddle !== null) puddles.set(mix.puddle, [...(puddles.get(mix.puddle) ?? []), mix]);
  if (puddles.size === 0) return null;
  return (
    <ul class={plan ? styles.list : styles.row} data-testid="puddle-row">
      {[...puddles].map(([puddle, uses]) => (
        <li key={puddle} class={styles.puddle}>
          <span class={styles.swatch} aria-hidden="true">
            {coloursOf(uses, marks).map((lab) => (
              <span key={lab.join()} style={{ background: cssColour(lab) }} />
            ))}
          </span>
          <span>
            <strong>{puddle}</strong> for{' '}
            {setWith(uses, marks).length > 0
              ? formatCount(setWith(uses, marks).length, 'touch', 'touches')
              : familyName(uses[0]?.family ?? 0)}
            {mixWords && `: ${partsSaid(uses[0]?.parts ?? [], mixWords)}`}
          </span>
        </li>
      ))}
    </ul>
  );
}
