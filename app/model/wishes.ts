import { boxWishes, type OwnBox } from './own-box.ts';
import type { Decision } from './painting.ts';
import type { ReadingWishes } from './reading.ts';
import type { Reference } from './reference.ts';
import { type DecisionKind, lastDecision, standingDecisions } from './standing-decisions.ts';
import { strokeInCut } from './stroke-on-photo.ts';
import { subjectStrokes } from './subject-strokes.ts';
import type { PlanWishes } from './wash-plan.ts';

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

/** The edits since the families were last set as the picture has them. */
function familyEdits(decisions: readonly Decision[]) {
  const edits = standingDecisions(decisions, 'families').map(({ edit }) => edit);
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
    ...unlessEmpty('familyEdits', familyEdits(decisions)),
    ...(smallest && { smallest }),
    ...unlessEmpty('alterations', alterations),
    ...(lastDecision(decisions, 'ground')?.plain && { plainGround: true }),
  };
}

export const paletteWish = (decisions: readonly Decision[]): PaletteWish =>
  lastDecision(decisions, 'palette') ?? usualPalette;

/** What she decided about paints and plan, and the box she chooses from. */
export function planWishes(decisions: readonly Decision[], box: OwnBox): PlanWishes {
  const { n, must, exclude, chosen } = paletteWish(decisions);
  const colours = lastDecision(decisions, 'colours')?.wish;
  // A paint of hers may have been taken out of the box since.
  const there = (ids: readonly string[]) => ids.filter((id) => !box.gone.includes(id));
  return {
    ...boxWishes(box),
    paletteSize: n,
    must: there(must),
    exclude: there(exclude),
    ...(chosen && { chosen: there(chosen) }),
    ...(colours && colours.mode !== 'photo' && { colours }),
  };
}

/** Decisions over the reading that only the plan follows: ways of whites, edges. */
export const planDecisionKinds: readonly DecisionKind[] = ['white-way', 'edge'];
