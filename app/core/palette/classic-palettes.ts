import type { Paint } from '../paint/paint.ts';

/** A paint a classic palette asks for: the names come in order, the first she owns is taken. */
interface ClassicPaint {
  /** In a painter's words, for when she has none of them: 'a cool yellow'. */
  readonly role: string;
  /** Colour Index names; with part of the paint's name behind it where one stands for several colours. */
  readonly ci: readonly string[];
}

/** A family of choices that painters start from. */
interface ClassicPalette {
  readonly id: string;
  readonly title: string;
  /** What it is good for, in one sentence. */
  readonly words: string;
  readonly paints: readonly ClassicPaint[];
}

const coolYellow = { role: 'a cool yellow', ci: ['PY175', 'PY3', 'PY74', 'PY184', 'PY154'] };
const warmYellow = { role: 'a warm yellow', ci: ['PY83', 'PY153', 'PY65', 'PY35', 'PY110'] };
const coolRed = { role: 'a cool red', ci: ['PV19', 'PR122', 'PR177'] };
const warmRed = { role: 'a warm red', ci: ['PR254', 'PR108', 'PR5', 'PR188', 'PR255'] };
const greenBlue = { role: 'a greenish blue', ci: ['PB15:3', 'PB15', 'PB15:1', 'PB27', 'PB36'] };
const redBlue = { role: 'a reddish blue', ci: ['PB29', 'PB60', 'PB28'] };
const burntSienna = {
  role: 'burnt sienna',
  ci: ['PBr7 burnt sienna', 'PR101', 'PBr7 burnt umber'],
};

/** Common practice, no source; nearest names first by hue and transparency. */
export const classicPalettes: readonly ClassicPalette[] = [
  {
    id: 'primaries',
    title: 'Three primaries',
    words: 'Every hue from three paints; orange, green and violet come from mixing.',
    paints: [coolYellow, coolRed, greenBlue],
  },
  {
    id: 'split-primaries',
    title: 'Split primaries',
    words: 'A cool and a warm one of each: neighbours mix clean, opposites mix quiet.',
    paints: [coolYellow, warmYellow, coolRed, warmRed, greenBlue, redBlue],
  },
  {
    id: 'earths',
    title: 'Earths',
    words: 'Quiet and related, a wide range of values, nothing shouts.',
    paints: [
      { role: 'yellow ochre', ci: ['PY43', 'PY42'] },
      burntSienna,
      { role: 'burnt umber', ci: ['PBr7 burnt umber', 'PBr7 raw umber'] },
      redBlue,
    ],
  },
  {
    id: 'dark-triad',
    title: 'Dark triad',
    words: 'Three deep transparent paints: strong darks without black, few brights.',
    paints: [
      { role: 'a deep yellow', ci: ['PY83', 'PY153', 'PY110', 'PBr7 raw sienna'] },
      { role: 'a deep cool red', ci: ['PR122', 'PV19', 'PR177'] },
      { role: 'a deep blue', ci: ['PB60', 'PB27', 'PB15:1'] },
    ],
  },
  {
    id: 'pair',
    title: 'A warm and a cool',
    words: 'Burnt sienna and ultramarine: every grey between them, and a near-black.',
    paints: [burntSienna, { role: 'ultramarine', ci: ['PB29'] }],
  },
];

/** A paint of her box as far as it is looked at here. */
type NamedPaint = Pick<Paint, 'id' | 'name' | 'ci'>;

interface ResolvedClassic {
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
