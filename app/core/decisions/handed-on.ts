import { largestPalette } from '../limits.ts';
import type { NewDecision, Painting } from './painting.ts';
import type { PlanEdit } from './plan-edit.ts';
import type { ColourWish } from './plan-wishes.ts';
import { lastDecision, standingPlanEdits } from './standing-decisions.ts';

type Handed = Pick<Painting, 'decisions' | 'handedOn'>;

/** Whether she has said since whose paints it is to be painted with. */
export const paintsAnswered = ({ decisions, handedOn }: Handed): boolean =>
  handedOn !== undefined &&
  decisions.slice(handedOn.decisions).some(({ kind }) => kind === 'palette');

/** Whose paint in place of which, by id. */
type Exchange = ReadonlyMap<string, string>;

function withPaints(wish: ColourWish, exchange: Exchange): ColourWish {
  const own = (paint: string): string => exchange.get(paint) ?? paint;
  if (wish.mode === 'one') return { ...wish, paint: own(wish.paint) };
  if (wish.mode !== 'own') return wish;
  return { ...wish, hues: wish.hues.map((hue) => ({ ...hue, paint: own(hue.paint) })) };
}

/** Two paints of a mix for which she has the same one are one. */
function editWithPaints(edit: PlanEdit, exchange: Exchange): PlanEdit {
  if (edit.kind !== 'mix') return edit;
  const parts = new Map<string, number>();
  for (const { paint, parts: count } of edit.parts) {
    const own = exchange.get(paint) ?? paint;
    parts.set(own, (parts.get(own) ?? 0) + count);
  }
  return { ...edit, parts: [...parts].map(([paint, count]) => ({ paint, parts: count })) };
}

/**
 * What is decided when a plan is to be painted with other paints: exactly these, as many washes as it has, and
 * colours and mixes that name its paints by theirs. All else stays as decided before, so the values are the same.
 */
export function decisionsForPaints(
  { decisions }: Pick<Painting, 'decisions'>,
  exchange: Exchange,
  washes: number,
): NewDecision[] {
  const chosen = [...new Set(exchange.values())].slice(0, largestPalette);
  const colours = lastDecision(decisions, 'colours')?.wish;
  const edits = standingPlanEdits(decisions);
  const changed = edits.map((edit) => editWithPaints(edit, exchange));
  const renames = JSON.stringify(changed) !== JSON.stringify(edits);
  return [
    ...(colours && colours.mode !== 'photo'
      ? [{ kind: 'colours' as const, wish: withPaints(colours, exchange) }]
      : []),
    ...(renames ? [null, ...changed].map((edit) => ({ kind: 'plan-edit' as const, edit })) : []),
    ...(washes > 0 ? [{ kind: 'washes' as const, count: washes }] : []),
    { kind: 'palette', n: Math.max(1, chosen.length), must: [], exclude: [], chosen },
  ];
}
