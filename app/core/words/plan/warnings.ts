import type { Range } from '../../colour/lab.ts';
import type { PaperChoice } from '../../drying/paper-choice.ts';
import { smallShapeMm } from '../../limits.ts';
import { paperInWords } from '../drying/drying-words.ts';
import { minutesInWords } from '../minutes.ts';
import { formatCount, openWithCount, pluralize } from '../numbers.ts';
import { bandWord } from '../reading-words.ts';
import type { ColourName } from './names.ts';
import { sayTitle, type TitleSaid } from './titles.ts';

/** Munsell values the darks want and get. */
interface Darks {
  readonly wanted: number;
  readonly got: number;
  readonly onePaint: boolean;
}

function darks({ wanted, got, onePaint }: Darks): string {
  const reach = onePaint ? 'this paint reaches' : 'these paints reach';
  const help = onePaint
    ? 'Take a darker paint, or let the picture stay lighter.'
    : 'Add a deep blue or brown.';
  return `The darks want value ${wanted.toFixed(1)} (10 is white), ${reach} ${got.toFixed(1)}: ${(got - wanted).toFixed(1)} too light. ${help}`;
}

interface OfColour {
  readonly colour: ColourName;
}

interface MissedShape extends OfColour {
  readonly band: number;
  /** Munsell values; above 0 too light. */
  readonly values: number;
}

interface MissedShapes {
  readonly shapes: readonly MissedShape[];
  /** Bands of the picture. */
  readonly count: number;
  /** More shapes that are not named. */
  readonly more: number;
  /** No wash of these paints is that dark. */
  readonly beyond: boolean;
}

function missedShapes({ shapes, count, more, beyond }: MissedShapes): string {
  const names = shapes.map(
    ({ band, colour, values }) =>
      `the ${bandWord(band, count)} ${colour} ${Math.abs(values).toFixed(1)} too ${values > 0 ? 'light' : 'dark'}`,
  );
  const others = more > 0 ? ` and ${more} more` : '';
  const why = beyond
    ? 'No mix of these paints gets that dark: add a deeper paint, or let it stay lighter.'
    : 'They share a wash or a puddle with others: allow one more wash, or change their mix.';
  return `Some shapes miss their value: ${names.join(', ')}${others} (in steps of ten). ${why}`;
}

interface Layers {
  readonly layers: number;
  readonly bears: number;
  readonly paper: PaperChoice;
}

interface TooLarge {
  readonly title: TitleSaid | string;
  /** Minutes of painting, and of open time. */
  readonly work: Range;
  readonly open: Range;
}

const tooLarge = ({ title, work }: TooLarge): string =>
  `${sayTitle(title)}: too large to finish while it is wet. It takes ${minutesInWords(work)}, and in this air`;

interface Whites {
  readonly count: number;
}

const larger = 'or take a larger sheet';

function paintedRound({ count }: Whites): string {
  const [they, them] = count === 1 ? ['it', 'it'] : ['they', 'them'];
  return `${openWithCount(count, 'white')} to be painted round ${pluralize(count, 'is', 'are')} too small for a brush on this sheet: ${they} would be lost. Mask ${them}, bring ${them} back with opaque white at the end, ${larger}.`;
}

function keptOtherwise({
  masked,
  last,
}: {
  readonly masked: number;
  readonly last: number;
}): string {
  const kept = [
    masked > 0 && `${formatCount(masked, 'is', 'are')} masked`,
    last > 0 && `${formatCount(last, 'comes', 'come')} back at the end`,
  ].filter(Boolean);
  const all = masked + last;
  return `${openWithCount(all, 'white')} ${pluralize(all, 'is', 'are')} too small to paint round on this sheet: ${kept.join(', ')}. To paint round ${pluralize(all, 'it', 'them')} take a larger sheet.`;
}

function drown({ count }: Whites): string {
  const them = pluralize(count, 'it', 'them');
  return `${openWithCount(count, 'white')} under ${smallShapeMm} mm would drown in the wet wash: mask ${them}, bring ${them} back with opaque white, ${larger}.`;
}

/** What a plan can't reach, with cause and what to do. */
export const warningSentences = {
  'reach/nothing': () =>
    'Everything here is as light as the paper: there is nothing to paint. Choose a photo with darker shapes.',
  'reach/darks': darks,
  'reach/colours-one-paint': () =>
    "One paint can't give the colours of the photo: they come out clearly different. Let it be a painting in values, or allow more paints.",
  'reach/colour': ({ colour }: OfColour) =>
    `The ${colour} can't be mixed from these paints: it comes out clearly different. Allow one more paint or add one of that hue.`,
  'reach/values-one-paint': () =>
    "This paint can't get all the values of the photo: choose a darker one, or let it stay lighter.",
  'reach/values': ({ colour }: OfColour) =>
    `The ${colour} can't get the values of the photo in this colour. Choose a darker paint for it, or let it stay lighter.`,
  'reach/shapes': missedShapes,
  'reach/layers': ({ layers, bears, paper }: Layers) =>
    `${layers} washes lie over each other; ${paperInWords(paper)}, bears ${bears} at most before it roughens and the paint below comes up. Ask for fewer washes, or take heavier paper of cotton.`,
  'reach/wet-too-large': (wash: TooLarge) =>
    `${tooLarge(wash)} the wet sheet shines for ${minutesInWords(wash.open)}. Split it at a hard border, take a smaller sheet, or soak the paper through from both sides.`,
  'reach/dry-too-large': (wash: TooLarge) =>
    `${tooLarge(wash)} an edge stays wet for ${minutesInWords(wash.open)}, so seams would show. Split it at a border, or wet the sheet first.`,
  'reach/whites-drown': drown,
  'reach/whites-round': paintedRound,
  'reach/whites-kept': keptOtherwise,
};
