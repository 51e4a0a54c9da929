import type { Paint } from '../paint/paint.ts';

/** What a paint is in a classic palette. */
export type ClassicRole =
  | 'cool-yellow'
  | 'warm-yellow'
  | 'cool-red'
  | 'warm-red'
  | 'greenish-blue'
  | 'reddish-blue'
  | 'burnt-sienna'
  | 'yellow-ochre'
  | 'burnt-umber'
  | 'deep-yellow'
  | 'deep-cool-red'
  | 'deep-blue'
  | 'ultramarine';

export type ClassicId = 'primaries' | 'split-primaries' | 'earths' | 'deep-three' | 'pair';

/** A paint a classic palette asks for: the names come in order, the first she owns is taken. */
interface ClassicPaint {
  /** What it is in the palette, for when she has none of them. */
  readonly role: ClassicRole;
  /**
   * Colour Index names, with part of the paint's name behind it where one stands for several colours; or a name alone,
   * for tubes that do not tell their pigments.
   */
  readonly asked: readonly string[];
}

/** A family of choices that painters start from. */
interface ClassicPalette {
  readonly id: ClassicId;
  readonly paints: readonly ClassicPaint[];
}

const coolYellow: ClassicPaint = {
  role: 'cool-yellow',
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
const warmYellow: ClassicPaint = {
  role: 'warm-yellow',
  asked: ['PY83', 'PY153', 'PY65', 'PY110', 'PY139', 'PY37', 'PY35', 'PY150', 'cadmium yellow'],
};
const coolRed: ClassicPaint = {
  role: 'cool-red',
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
const warmRed: ClassicPaint = {
  role: 'warm-red',
  asked: ['PR254', 'PR108', 'PR255', 'PR5', 'PR188', 'PR112', 'PR170', 'PO73', 'cadmium red'],
};
const greenBlue: ClassicPaint = {
  role: 'greenish-blue',
  asked: ['PB15:3', 'PB15', 'PB15:1', 'PB27', 'PB16', 'PB36', 'PB35', 'PB33', 'cerulean blue'],
};
const redBlue: ClassicPaint = {
  role: 'reddish-blue',
  asked: ['PB29', 'PB60', 'PB28', 'PB74', 'cobalt blue'],
};
const burntSienna: ClassicPaint = {
  role: 'burnt-sienna',
  asked: ['PBr7 burnt sienna', 'PR101 sienna', 'PR101 transparent', 'PBr7 burnt umber'],
};

/** Common practice, no source; nearest names first by hue and transparency. */
export const classicPalettes: readonly ClassicPalette[] = [
  {
    id: 'primaries',
    paints: [coolYellow, coolRed, greenBlue],
  },
  {
    id: 'split-primaries',
    paints: [coolYellow, warmYellow, coolRed, warmRed, greenBlue, redBlue],
  },
  {
    id: 'earths',
    paints: [
      { role: 'yellow-ochre', asked: ['PY43', 'PY42'] },
      burntSienna,
      { role: 'burnt-umber', asked: ['PBr7 burnt umber', 'PBr7 raw umber'] },
      redBlue,
    ],
  },
  {
    id: 'deep-three',
    paints: [
      {
        role: 'deep-yellow',
        asked: ['PY83', 'PY153', 'PY110', 'PY139', 'PO49', 'PBr7 raw sienna'],
      },
      {
        role: 'deep-cool-red',
        asked: ['PV19 violet', 'PR179', 'PR122', 'PV19', 'PR177', 'PR83', 'alizarin crimson'],
      },
      { role: 'deep-blue', asked: ['PB60', 'PB27', 'PB15:1', 'PB15:3'] },
    ],
  },
  {
    id: 'pair',
    paints: [burntSienna, { role: 'ultramarine', asked: ['PB29'] }],
  },
];

/** A paint of her box as far as it is looked at here. */
type NamedPaint = Pick<Paint, 'id' | 'name' | 'ci'>;

export interface MissingPaint {
  readonly role: ClassicRole;
  readonly ci: string;
}

interface ResolvedClassic {
  /** Ids of her paints, in the palette's order, each once. */
  readonly paints: readonly string[];
  /** What she has nothing for, with the first Colour Index name. */
  readonly missing: readonly MissingPaint[];
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
  const missing: MissingPaint[] = [];
  for (const wanted of classic.paints) {
    const found = paintFor(wanted, box, paints);
    if (found) paints.push(found.id);
    else missing.push({ role: wanted.role, ci: wanted.asked[0].split(' ')[0] });
  }
  return { paints, missing };
}
