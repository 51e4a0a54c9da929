import type { ClassicId, ClassicRole, MissingPaint } from '../../palette/classic-palettes.ts';

interface ClassicWords {
  readonly title: string;
  /** What it is good for, in one sentence. */
  readonly words: string;
}

/** What the palettes painters start from are called, and what they are good for. */
export const classicWords: Readonly<Record<ClassicId, ClassicWords>> = {
  primaries: {
    title: 'Three primaries',
    words: 'Every hue from three paints; orange, green and violet come from mixing.',
  },
  'split-primaries': {
    title: 'Split primaries',
    words: 'A warm and a cool of each primary: neighbours mix clean, opposites go grey.',
  },
  earths: {
    title: 'Earths',
    words: 'Quiet and related, a wide range of values, nothing shouts.',
  },
  'deep-three': {
    title: 'Deep transparent three',
    words: 'Strong darks without black, few brights.',
  },
  pair: {
    title: 'A warm and a cool',
    words: 'Burnt sienna and ultramarine: every grey between them, and a near-black.',
  },
};

const roles: Readonly<Record<ClassicRole, string>> = {
  'cool-yellow': 'a cool yellow',
  'warm-yellow': 'a warm yellow',
  'cool-red': 'a cool red',
  'warm-red': 'a warm red',
  'greenish-blue': 'a greenish blue',
  'reddish-blue': 'a reddish blue',
  'burnt-sienna': 'burnt sienna',
  'yellow-ochre': 'yellow ochre',
  'burnt-umber': 'burnt umber',
  'deep-yellow': 'a deep yellow',
  'deep-cool-red': 'a deep cool red',
  'deep-blue': 'a deep blue',
  ultramarine: 'ultramarine',
};

/** 'Not in your box: a cool yellow (PY3), a deep blue (PB60).' */
export const missingInWords = (missing: readonly MissingPaint[]): string =>
  `Not in your box: ${missing.map(({ role, ci }) => `${roles[role]} (${ci})`).join(', ')}.`;
