import { boxWishes } from './box-wishes.ts';
import { type KeptAir, usualAir } from './drying/kept-air.ts';
import type { OwnBox } from './own-box.ts';
import type { Decision } from './painting.ts';
import type { PlanWishes } from './plan-wishes.ts';
import type { ReadingWishes } from './reading.ts';
import type { Reference } from './reference.ts';
import { type DecisionKind, lastDecision, standingDecisions } from './standing-decisions.ts';
import { standingPlanEdits } from './standing-plan-edits.ts';
import { strokeInCut } from './stroke-on-photo.ts';
import { subjectStrokes } from './subject-strokes.ts';

export interface PaletteWish {
  /** At most this many paints. */
  readonly n: number;
  readonly must: readonly string[];
  readonly exclude: readonly string[];
  readonly chosen?: readonly string[];
}

const usualPalette: PaletteWish = { n: 5, must: [], exclude: [] };

type Cut = Pick<Reference, 'crop' | 'sheet'>;

/** A list under its name, or nothing where it is empty. */
const unlessEmpty = <N extends keyof ReadingWishes, T>(name: N, list: readonly T[]) =>
  list.length > 0 ? { [name]: list } : {};

/** The edits since all of their kind were last dropped. */
function standing<E>(edits: readonly (E | null)[]): E[] {
  return edits.slice(edits.lastIndexOf(null) + 1).filter((edit) => edit !== null);
}

/** What she decided about the reading of that reference; the rest is proposed. */
export function readingWishes(decisions: readonly Decision[], cut: Cut): ReadingWishes {
  const values = lastDecision(decisions, 'bands', 'limits');
  const range = lastDecision(decisions, 'range');
  const smallest = lastDecision(decisions, 'smallest')?.sizes;
  const whites = standingDecisions(decisions, 'white').map(({ mode, ...stroke }) => ({
    mode,
    ...strokeInCut(cut, stroke),
  }));
  const alterations = standingDecisions(decisions, 'alter').map(({ change, ...stroke }) => ({
    change,
    ...strokeInCut(cut, stroke),
  }));
  return {
    ...(values?.kind === 'bands' && { bands: values.count }),
    ...(values?.kind === 'limits' && { limits: values.lightness }),
    ...(range && { range: range.mode }),
    ...unlessEmpty('subject', subjectStrokes(decisions, cut)),
    ...unlessEmpty('whites', whites),
    ...unlessEmpty(
      'familyEdits',
      standing(standingDecisions(decisions, 'families').map(({ edit }) => edit)),
    ),
    ...(smallest && { smallest }),
    ...unlessEmpty('alterations', alterations),
    ...(lastDecision(decisions, 'ground')?.plain && { plainGround: true }),
  };
}

export const paletteWish = (decisions: readonly Decision[]): PaletteWish =>
  lastDecision(decisions, 'palette') ?? usualPalette;

/** What she decided about paints and plan, the box she chooses from, her air and her paper. */
export function planWishes(
  decisions: readonly Decision[],
  box: OwnBox,
  { weather, paper }: Pick<KeptAir, 'weather' | 'paper'> = usualAir,
): PlanWishes {
  const { n, must, exclude, chosen } = paletteWish(decisions);
  const colours = lastDecision(decisions, 'colours')?.wish;
  const evening = lastDecision(decisions, 'evening')?.minutes;
  const washes = lastDecision(decisions, 'washes')?.count;
  const passages = lastDecision(decisions, 'passages')?.order;
  const edits = standingPlanEdits(decisions);
  // A paint of hers may have been taken out of the box since.
  const there = (ids: readonly string[]) => ids.filter((id) => !box.gone.includes(id));
  return {
    ...boxWishes(box),
    paletteSize: n,
    must: there(must),
    exclude: there(exclude),
    ...(chosen && { chosen: there(chosen) }),
    ...(colours && colours.mode !== 'photo' && { colours }),
    weather,
    paper,
    ...(evening && { evening }),
    ...(washes && { washes }),
    ...(passages && { passages }),
    ...(edits.length > 0 && { edits }),
  };
}

/** Decisions over the reading that only the plan follows: ways of whites, edges. */
export const planDecisionKinds: readonly DecisionKind[] = ['white-way', 'edge'];
