import { longestPrompt } from '../../limits.ts';
import type { Place } from '../../raster/size.ts';
import { capitalize, joinWords } from '../numbers.ts';
import { sideInWords } from '../places.ts';
import { passageWord } from '../reading-words.ts';
import {
  type AreaSaid,
  type BandsSaid,
  type ColourName,
  type MeetingSaid,
  nameArea,
  nameBands,
  nameMeeting,
} from './names.ts';

/** What the first wash of a passage goes over. */
interface FirstArea {
  /** 'ground', 'subject'; left out where the sheet is painted as one. */
  readonly passage?: 'ground' | 'subject';
  /** Whites must be left out. */
  readonly whites: boolean;
}

/** The sheet, or the passage up to the line; `whole` where whites are left out of the sheet, `all` where none are. */
function firstArea({ passage, whites }: FirstArea, whole: string, all: string): string {
  if (passage === undefined) return whites ? `${whole} but the whites` : all;
  const other = passage === 'ground' ? 'subject' : 'ground';
  return `the ${passageWord(passage)} up to the ${passageWord(other)}${whites ? ', but not the whites' : ''}`;
}

interface FirstOnDry extends FirstArea {
  /** Begun at its strong side, a graded wash does not go from top to bottom of itself. */
  readonly graded: boolean;
  /** Lighter bands share the puddle, thinner. */
  readonly thinner: boolean;
  /** It runs down a tilted board. */
  readonly bead: boolean;
}

function firstOnDry({ graded, thinner, bead, ...area }: FirstOnDry): string {
  const all = `Wash ${firstArea(area, 'the whole sheet', 'the whole sheet')}`;
  const way = graded ? '.' : ', top to bottom.';
  const thin = thinner ? ' Add water where it stays lightest.' : '';
  const how = bead
    ? 'Keep a bead running and do not go back in.'
    : 'Join stroke to wet stroke and do not go back in.';
  return `${all}${way}${thin} ${how}`;
}

/** A wash after the first: the values it paints, and the shape it begins with, where that is known. */
interface LaterWash extends BandsSaid {
  readonly first?: { readonly colour: ColourName; readonly place: Place };
}

const beginning = ({ first }: LaterWash): string =>
  first ? `, the ${first.colour} ${sideInWords(first.place)} first` : '';

interface TwoWays {
  /** 1 is the first wash. */
  readonly wash: number;
  /** What goes on wetted paper. */
  readonly smooth: AreaSaid;
  readonly whites: boolean;
}

function twoWays({ wash, smooth, whites }: TwoWays): string {
  const name = nameArea(smooth);
  const wetted = wash === 1 ? `Wet only ${name}` : `Wet ${name} again, no scrubbing`;
  const rest = whites ? 'the rest but the whites' : 'the rest';
  return `${wetted}; at an even sheen lay in the colour. Then ${rest} on dry paper, a dry line between.`;
}

/** What is painted, by its colours or its values; by no name where the names would be too long. */
function fitted(sentence: (shapes: string) => string, names: readonly string[]): string {
  const full = sentence(`${joinWords(names)} shapes`);
  return full.length <= longestPrompt ? full : sentence('marked shapes');
}

interface Colours {
  readonly colours: readonly ColourName[];
}

const dryBrushed = (names: readonly string[]): string =>
  fitted(
    (shapes) =>
      `Blot the loaded brush, hold it low and drag it over the ${shapes}: only the tops of the paper take paint.`,
    names,
  );

interface Named {
  readonly edges: readonly MeetingSaid[];
}
const listed = ({ edges }: Named, between = '; '): string => edges.map(nameMeeting).join(between);

/** What is done at a wash, what to watch, and what becomes of its edges. */
export const washSentences = {
  'wash/first-wet': (area: FirstArea) =>
    `Wet ${firstArea(area, 'everything', 'the sheet')}; at an even sheen lay in colour, thicker than on dry paper. Stop as the shine starts to go.`,
  'wash/first-dry': firstOnDry,
  'wash/two-ways': twoWays,
  'wash/later-wet': (wash: LaterWash) =>
    `Wet the ${nameBands(wash)} shapes gently with a wide soft brush, no scrubbing. At an even sheen lay in thicker paint${beginning(wash)}.`,
  'wash/last': (wash: LaterWash) =>
    `Paint the ${nameBands(wash)} shapes strong enough the first time${beginning(wash) || ', big ones before small'}. Then leave them alone.`,
  'wash/glaze': (wash: LaterWash) =>
    `One thin pass over the ${nameBands(wash)} shapes and all that is darker${beginning(wash)}. Do not scrub, do not go back.`,
  'wash/later': (wash: LaterWash) =>
    `Paint the ${nameBands(wash)} shapes and all that is darker in one go${beginning(wash)}; join shapes that touch.`,
  'wash/go-wet': ({ colours }: Colours) =>
    fitted(
      (shapes) =>
        `Wet only the ${shapes}. At an even sheen lay the colours in, up to their borders.`,
      colours,
    ),
  'wash/go-glaze': ({ colours }: Colours) =>
    fitted((shapes) => `One thin pass over the ${shapes} only. Do not scrub.`, colours),
  'wash/go-dry': ({ colours }: Colours) =>
    fitted(
      (shapes) => `Paint only the ${shapes} in one go, and stop at the border of the others.`,
      colours,
    ),
  'wash/once-more-wet': ({ colours }: Colours) =>
    fitted(
      (shapes) =>
        `Wet the ${shapes} gently once more. At an even sheen lay the same colour over them.`,
      colours,
    ),
  'wash/once-more': ({ colours }: Colours) =>
    fitted(
      (shapes) => `Lay the same colour once more over the ${shapes}: one pass, no scrubbing.`,
      colours,
    ),
  'wash/in-one-go-wet': () =>
    'Wet all these shapes. At an even sheen lay in the lighter colours, then at once the darker ones, thicker, where they belong.',
  'wash/in-one-go': () =>
    'Paint the lighter shapes, and while they still shine the darker ones into them, thicker.',
  'wash/dry-brush': ({ colours }: Colours) => dryBrushed(colours),
  'wash/dry-brush-bands': ({ bands, count }: BandsSaid) =>
    dryBrushed(bands.map((band) => nameBands({ bands: [band], count }))),
  'watch/grain': () => 'Stop before the grain fills. Then leave it alone.',
  'watch/nothing-wetter': () => 'Once the shine has gone, add nothing wetter: leave it alone.',
  'watch/leave-it': () => 'Once the shine goes, leave it alone until it is dry.',
  'edges/run-soft': () => 'Its edges run soft by themselves.',
  'edges/stay-crisp': () => 'Its edges stay as the brush leaves them, crisp.',
  'edges/line-crisp': (named: Named) =>
    `The line is crisp between ${listed(named, ', and between ')}: stop at it, and leave a hair of paper dry there.`,
  'edges/stop-short': (named: Named) =>
    `These edges stay crisp, so stop the water short of them: ${listed(named)}.`,
  'edges/run-out': (named: Named) => `${capitalize(listed(named))}.`,
  'edges/soften': (named: Named) =>
    `While it shines, soften these edges with a clean, barely damp brush: ${listed(named)}.`,
  'edges/leave-crisp': ({ wet, ...named }: Named & { readonly wet: boolean }) =>
    `Leave crisp: ${listed(named)}.${wet ? ' Stop the water short of them.' : ''}`,
  'line/across': () => 'Paint across the line while it is wet.',
  'line/lost': ({ passage }: { readonly passage: string }) =>
    `Most of the line is lost: there wet the dry edge of the ${passageWord(passage)} and let the colour run over it.`,
  'line/dry': ({ passage }: { readonly passage: string }) =>
    `The ${passageWord(passage)} must be bone dry along the line.`,
};
