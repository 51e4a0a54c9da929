import type { ClassicPaint, ClassicPalette } from './classic-palettes.ts';
import type { Paint } from './paint.ts';

/** A paint of her box as far as it is looked at here. */
export type NamedPaint = Pick<Paint, 'id' | 'name' | 'ci'>;

export interface ResolvedClassic {
  /** Ids of her paints, in the palette's order, each once. */
  readonly paints: readonly string[];
  /** What she has nothing for, with the first Colour Index name: 'a cool yellow (PY175)'. */
  readonly missing: readonly string[];
}

/** Asked for is 'PB29', or 'PBr7 burnt sienna'. */
function answersTo({ ci, name }: NamedPaint, asked: string): boolean {
  const [index = '', ...called] = asked.split(' ');
  return ci.includes(index) && name.toLowerCase().includes(called.join(' '));
}

function paintFor(
  { ci }: ClassicPaint,
  box: readonly NamedPaint[],
  taken: readonly string[],
): NamedPaint | undefined {
  const free = box.filter(({ id }) => !taken.includes(id));
  for (const name of ci) {
    const found = free.filter((paint) => answersTo(paint, name));
    // A single pigment before a mixed tube.
    const [best] = found.sort((one, two) => one.ci.length - two.ci.length);
    if (best) return best;
  }
  return undefined;
}

/** A classic palette in her own paints: for each the nearest by Colour Index name, and what she lacks. */
export function resolveClassic(
  classic: ClassicPalette,
  box: readonly NamedPaint[],
): ResolvedClassic {
  const paints: string[] = [];
  const missing: string[] = [];
  for (const asked of classic.paints) {
    const found = paintFor(asked, box, paints);
    if (found) paints.push(found.id);
    else missing.push(`${asked.role} (${asked.ci[0]?.split(' ')[0]})`);
  }
  return { paints, missing };
}
