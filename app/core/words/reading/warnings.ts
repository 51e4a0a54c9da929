import type { BandsWhy, ReadingWarning, WrittenWarning } from '../../reading/reading.ts';
import { capitalize, pluralize, spellCount } from '../numbers.ts';
import { formatPercent } from '../reading-words.ts';

const plain = {
  'nothing-to-paint':
    'Everything in this picture is as light as the paper: there is nothing to paint. Choose another photo.',
  'too-broken':
    'Much of this photo is too fine for your sheet. Use a bigger sheet, crop in, or use fewer values.',
  'all-hard':
    'Nearly every edge is hard, which looks stiff and cut out: choose some away from the centre of interest to soften or lose.',
  flat: 'The photo is flat, its lights and darks lie close together: open the values up, or take it again in stronger light.',
  'high-key':
    'High key, nearly everything is light: keep the washes pale and spend your few darks where you want the eye.',
  'low-key':
    'Low key, nearly everything is dark: guard the few lights and mix the darks strong from the start.',
  'no-darks':
    'There is no real dark in it: choose one place near the centre of interest and paint it darker than you see it.',
  merge:
    'Shapes of different colour meet at the same value and will run together: make one of them lighter or darker, or let the edge go.',
  'untrue-pixels':
    'This browser changes the colours of pictures a little as they are read: take values near a limit with care, or use another browser.',
  'part-missing':
    'Part of this photo is missing: the file is damaged, and grey or wrong colours stand in for it. Copy the photo again from where it came, or crop that part away.',
} as const;

const thirds = { darks: 'darks', mids: 'mid tones', lights: 'lights' } as const;

function smallInWords(share: number | undefined): string {
  if (share === undefined)
    return 'The photo is very small, so shapes and edges are rough: use the original photo if you have it.';
  const percent = share < 0.01 ? 'less than 1' : `only ${Math.round(share * 100)}`;
  return `Of this photo ${percent} % is on your sheet: their shapes are far apart. Choose a longer sheet, or the part that matters, under Sheet.`;
}

/** A warning of a reading, cause and what to do; the sentence itself where a reading of before has it. */
export function warningInWords(warning: ReadingWarning | WrittenWarning): string {
  if ('text' in warning) return warning.text;
  switch (warning.code) {
    case 'few-tones':
      return `The picture holds no more than ${warning.values === 1 ? 'one value' : `${warning.values} values`}: that is all the study can show. Choose a photo with more light and shade if you want more.`;
    case 'clipped-light':
      return `${capitalize(formatPercent(warning.share))} of the photo is blown out to white. Leave it as paper, or look at the real thing.`;
    case 'clipped-dark':
      return `${capitalize(formatPercent(warning.share))} of the photo is lost in black. Look at the real thing for colour in those shadows.`;
    case 'one-third':
      return `${formatPercent(warning.share)} of the picture lies in the ${thirds[warning.third]}: push some shapes lighter or darker so that it does not look even.`;
    case 'small-picture':
      return smallInWords(warning.share);
    default:
      return plain[warning.code];
  }
}

const bandsWhys = {
  'whites-merge': 'Five values: with four, the whites would merge with the lights.',
  'three-enough': 'Light, mid and dark hold nearly everything: three values are enough.',
  'widely-spread': 'The tones are spread so widely that four values would lose shapes: take five.',
  'one-colour': 'All is of one colour, so value has to tell everything: take five.',
  clear: 'Four values keep the shapes clear.',
} as const;

/** Why a reading proposes its number of bands, in a sentence; as it was stored where a reading of before has it. */
export function bandsWhyInWords(why: BandsWhy | string): string {
  if (typeof why === 'string') return why;
  return why.why === 'few-tones'
    ? `The picture holds no more than ${spellCount(why.tones)} ${pluralize(why.tones, 'tone')}.`
    : bandsWhys[why.why];
}
