import { longestPrompt } from '../../limits.ts';
import type { Place } from '../../raster/size.ts';
import { capitalize } from '../numbers.ts';
import { partsInWords } from '../paint/mix-words.ts';
import { sideInWords } from '../places.ts';
import { bandWord } from '../reading-words.ts';
import type { ColourName } from './names.ts';

/** Some shapes of her sheet, and where they lie. */
export type PlacedShape = { readonly place: Place } & (
  | { readonly shape: 'unknown' | 'white' }
  | {
      readonly shape: 'colour';
      readonly colour: ColourName;
      readonly band: number;
      /** Bands of the picture. */
      readonly count: number;
    }
);

/** 'the dark dull green on the left', 'the white in the middle'. */
export function namePlacedShape(placed: PlacedShape): string {
  const where = sideInWords(placed.place);
  if (placed.shape === 'colour')
    return `the ${bandWord(placed.band, placed.count)} ${placed.colour} ${where}`;
  return placed.shape === 'white' ? `the white ${where}` : `the shape ${where}`;
}

/** A mix by the names of its paints, with how strong they are, loads per ml. */
export type MixSaid = readonly {
  readonly paint: string;
  readonly parts: number;
  readonly strength: number;
}[];

/** 'mostly ultramarine blue, a touch of burnt sienna, like milk'. */
export function mixLikeInWords({ mix, like }: MixedLike): string {
  const strengthOf = (name: string): number =>
    mix.find(({ paint }) => paint === name)?.strength ?? 1;
  return `${partsInWords(mix, (name) => name, strengthOf)}${likeInWords(like)}`;
}

interface MixedLike {
  readonly mix: MixSaid;
  /** Its consistency; left out: not told. */
  readonly like?: string;
}

const likeInWords = (like: string | undefined): string => (like ? `, like ${like}` : '');

/** What is to be done, before the sentence that says where and with what. */
export const mendingTitles = {
  glaze: 'A glaze',
  'lay-missing': 'Lay what is missing',
  'stronger-next': 'Stronger in a later wash',
  'weaker-next': 'Weaker in a later wash',
  lift: 'Lift it',
  'opaque-white': 'Opaque white',
  'soften-edge': 'Soften an edge',
  'sharpen-edge': 'Sharpen an edge',
  'leave-as-is': 'Let it be',
} as const;

interface Shaped {
  readonly placed: PlacedShape;
}
type Mixed = Shaped & MixedLike;

/** The shape by its name where there is room for it. */
function fitted(placed: PlacedShape, sentence: (shape: string) => string): string {
  const whole = sentence(namePlacedShape(placed));
  return whole.length <= longestPrompt ? whole : sentence('the marked shapes');
}

/** What mends her sheet after a comparison, as prompts at the easel. */
export const mendSentences = {
  'mend/glaze': ({ placed, ...mixed }: Mixed) =>
    fitted(
      placed,
      (shape) => `Glaze ${shape} with ${mixLikeInWords(mixed)}: one thin pass, bone dry beneath.`,
    ),
  'mend/lay-missing': ({ placed, ...mixed }: Mixed) =>
    fitted(
      placed,
      (shape) => `Lay ${shape}, which is still missing, with ${mixLikeInWords(mixed)}.`,
    ),
  'mend/lift': ({ placed }: Shaped) =>
    fitted(placed, (shape) => `Wet ${shape} and lift paint with a clean damp brush.`),
  'mend/opaque-white': ({ placed }: Shaped) =>
    fitted(placed, (shape) => `Set ${shape} back in opaque white.`),
  'mend/soften-edge': ({ placed }: Shaped) =>
    fitted(placed, (shape) => `Wet the edge of ${shape} with a clean damp brush and soften it.`),
  'mend/sharpen-edge': ({ placed }: Shaped) =>
    fitted(placed, (shape) => `Draw the edge of ${shape} again with the darker mix.`),
  'mend/otherwise': ({ placed }: Shaped) =>
    fitted(placed, (shape) => `Lay it differently at ${shape}.`),
  /** A note at a wash to come. */
  'mend/next-wash': ({ placed, how, like }: NextWash) =>
    `${capitalize(namePlacedShape(placed))}: lay it ${how} there${likeInWords(like)}, as it came out differently before.`,
};

interface NextWash extends Shaped {
  readonly how: 'stronger' | 'weaker';
  readonly like?: string;
}
