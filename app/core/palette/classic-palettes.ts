import type { Paint } from '../paint/paint.ts';

/** A paint a classic palette asks for: the names come in order, the first she owns is taken. */
interface ClassicPaint {
  /** In a painter's words, for when she has none of them: 'a cool yellow'. */
  readonly role: string;
  /**
   * Colour Index names, with part of the paint's name behind it where one stands for several colours; or a name alone,
   * for tubes that do not tell their pigments.
   */
  readonly asked: readonly string[];
}

/** A family of choices that painters start from. */
interface ClassicPalette {
  readonly id: string;
  readonly title: string;
  /** What it is good for, in one sentence. */
  readonly words: string;
  readonly paints: readonly ClassicPaint[];
}

const coolYellow = {
  role: 'a cool yellow',
  asked: [
    'PY3',
    'PY175',
    'PY35 lemon',
    'PY138',
    'PY151',
    'PY154',
    'PY97',
    'PY74',
    'PY184',
    'PY53',
    'lemon yellow',
  ],
};
const warmYellow = {
  role: 'a warm yellow',
  asked: ['PY83', 'PY153', 'PY65', 'PY110', 'PY139', 'PY37', 'PY35', 'PY150', 'cadmium yellow'],
};
const coolRed = {
  role: 'a cool red',
  asked: [
    'PV19 rose',
    'PV19 red',
    'PV19',
    'PR122',
    'PR177',
    'PR264',
    'PR209',
    'PR83',
    'alizarin crimson',
  ],
};
const warmRed = {
  role: 'a warm red',
  asked: ['PR254', 'PR108', 'PR255', 'PR5', 'PR188', 'PR112', 'PR170', 'PO73', 'cadmium red'],
};
const greenBlue = {
  role: 'a greenish blue',
  asked: ['PB15:3', 'PB15', 'PB15:1', 'PB27', 'PB16', 'PB36', 'PB35', 'PB33', 'cerulean blue'],
};
const redBlue = {
  role: 'a reddish blue',
  asked: ['PB29', 'PB60', 'PB28', 'PB74', 'cobalt blue'],
};
const burntSienna = {
  role: 'burnt sienna',
  asked: ['PBr7 burnt sienna', 'PR101 sienna', 'PR101 transparent', 'PBr7 burnt umber'],
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
    words: 'A warm and a cool of each primary: neighbours mix clean, opposites go grey.',
    paints: [coolYellow, warmYellow, coolRed, warmRed, greenBlue, redBlue],
  },
  {
    id: 'earths',
    title: 'Earths',
    words: 'Quiet and related, a wide range of values, nothing shouts.',
    paints: [
      { role: 'yellow ochre', asked: ['PY43', 'PY42'] },
      burntSienna,
      { role: 'burnt umber', asked: ['PBr7 burnt umber', 'PBr7 raw umber'] },
      redBlue,
    ],
  },
  {
    id: 'deep-three',
    title: 'Deep transparent three',
    words: 'Strong darks without black, few brights.',
    paints: [
      {
        role: 'a deep yellow',
        asked: ['PY83', 'PY153', 'PY110', 'PY139', 'PO49', 'PBr7 raw sienna'],
      },
      {
        role: 'a deep cool red',
        asked: ['PV19 violet', 'PR179', 'PR122', 'PV19', 'PR177', 'PR83', 'alizarin crimson'],
      },
      { role: 'a deep blue', asked: ['PB60', 'PB27', 'PB15:1', 'PB15:3'] },
    ],
  },
  {
    id: 'pair',
    title: 'A warm and a cool',
    words: 'Burnt sienna and ultramarine: every grey between them, and a near-black.',
    paints: [burntSienna, { role: 'ultramarine', asked: ['PB29'] }],
  },
];

/** A paint of her box as far as it is looked at here. */
type NamedPaint = Pick<Paint, 'id' | 'name' | 'ci'>;

interface ResolvedClassic {
  /** Ids of her paints, in the palette's order, each once. */
  readonly paints: readonly string[];
  /** What she has nothing for, with the first Colour Index name: 'a cool yellow (PY3)'. */
  readonly missing: readonly string[];
}

const isCalled = (name: string, words: string): boolean => name.toLowerCase().includes(words);

/**
 * Asked for is 'PB29', 'PBr7 burnt sienna' or, of a tube that does not tell its pigments, 'lemon yellow'. A mixed tube
 * is taken by the pigment that stands first.
 */
function answersTo({ ci, name }: NamedPaint, asked: string): boolean {
  const [first = '', ...called] = asked.split(' ');
  if (!/^P\w+\d/.test(first)) return ci.length === 0 && isCalled(name, asked);
  return ci[0] === first && isCalled(name, called.join(' '));
}

/** The paint itself before a substitute. */
const isSubstitute = ({ name }: NamedPaint): number => Number(/\bhue$/.test(name));

/** A single pigment before a mixed tube. */
function paintFor(
  { asked }: ClassicPaint,
  box: readonly NamedPaint[],
  taken: readonly string[],
): NamedPaint | undefined {
  const free = box.filter(({ id }) => !taken.includes(id));
  const single = free.filter(({ ci }) => ci.length <= 1);
  const mixed = free.filter(({ ci }) => ci.length > 1);
  for (const paints of [single, mixed]) {
    for (const name of asked) {
      const found = paints.filter((paint) => answersTo(paint, name));
      const [best] = found.sort((one, two) => isSubstitute(one) - isSubstitute(two));
      if (best) return best;
    }
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
  for (const wanted of classic.paints) {
    const found = paintFor(wanted, box, paints);
    if (found) paints.push(found.id);
    else missing.push(`${wanted.role} (${wanted.asked[0]?.split(' ')[0]})`);
  }
  return { paints, missing };
}
