import { longestPrompt } from '../../limits.ts';
import type { Place } from '../../raster/size.ts';
import { capitalize, formatAll, joinWords } from '../numbers.ts';
import { sideInWords } from '../places.ts';
import { bandWord, passageWord } from '../reading-words.ts';
import { type SaidBy, sayBy } from './said.ts';

/**
 * What a colour family is called in its reading ('dull green'), the code of the colour in a sentence; 'shapes' where a
 * single paint makes all families one colour.
 */
export type ColourName = string;

/** A family that its reading does not name. */
export const unnamedColour = (family: number): ColourName => `colour ${family}`;

/** One side of an edge, or a shape by itself. */
export const shapeNames = {
  'shape/rest': ({ tone }: Toned) => theShape('rest', tone),
  'shape/white': ({ tone }: Toned) => theShape('white', tone),
  'shape/colour': ({ colour, tone }: Toned & { readonly colour: ColourName }) =>
    theShape(colour, tone),
};

/** Beside a shape of the same colour: the lighter or the darker of the two. */
interface Toned {
  readonly tone?: 'lighter' | 'darker';
}
const theShape = (name: string, tone: Toned['tone']): string =>
  tone ? `the ${tone} ${name}` : `the ${name}`;

/** One side of an edge: 'the dull green', 'the darker dull green'. */
export type ShapeSaid = SaidBy<typeof shapeNames>;
export const nameShape = sayBy(shapeNames);

interface TwoShapes {
  readonly one: ShapeSaid;
  readonly two: ShapeSaid;
  /** Where their edge lies; left out: not said. */
  readonly place?: Place;
}
const whereIs = (place: Place | undefined): string => (place ? `, ${sideInWords(place)}` : '');

/** Where two shapes meet. */
export const meetingNames = {
  'meeting/and': ({ one, two, place }: TwoShapes) =>
    `${joinWords([nameShape(one), nameShape(two)])}${whereIs(place)}`,
  'meeting/against': ({ one, two, place }: TwoShapes) =>
    `${nameShape(one)} against ${nameShape(two)}${whereIs(place)}`,
  'meeting/into': ({ one, two }: TwoShapes) => `${nameShape(one)} into ${nameShape(two)}`,
  'meeting/within': ({ one }: { readonly one: ShapeSaid }) => `within ${nameShape(one)}`,
  'meeting/run-out': ({ one, two, place }: TwoShapes) =>
    `let ${nameShape(one)} run out into ${nameShape(two)}${whereIs(place)}`,
};
export type MeetingSaid = SaidBy<typeof meetingNames>;
export const nameMeeting = sayBy(meetingNames);

interface ColourArea {
  readonly colour: ColourName;
  /** Its lightest shapes only, where the rest of the wash has others of that colour. */
  readonly lightest: boolean;
  /** Where it is one plain shape. */
  readonly place?: Place;
  /** Other colours lie in it. */
  readonly more: boolean;
}

/** An area of a wash that is painted in two ways. */
export const areaNames = {
  'area/colour': ({ colour, lightest, place, more }: ColourArea) =>
    `the ${lightest ? 'lightest ' : ''}${colour}${place ? ` ${sideInWords(place)}` : ''}${more ? ' and what runs into it' : ''}`,
  'area/rest': () => 'the rest',
};
export type AreaSaid = SaidBy<typeof areaNames>;
export const nameArea = sayBy(areaNames);

/** Some bands of a picture of `count` values: 'light and mid'. */
export interface BandsSaid {
  readonly bands: readonly number[];
  readonly count: number;
}
export const nameBands = ({ bands, count }: BandsSaid): string =>
  joinWords(bands.map((band) => bandWord(band, count)));

/** 'Background: ' before a title that is about one passage of several. */
export const passagePrefix = (passage: string | undefined): string =>
  passage === undefined ? '' : `${capitalize(passageWord(passage))}: `;

/** 'the one small white', 'the 12 whites': small only where all of them are. */
export const nameWhites = (count: number, isSmall: boolean): string =>
  formatAll(count, isSmall ? 'small white' : 'white');

/** A sentence with as many of the names as there is room for, always the first `always` of them. */
export function fittedNames(
  sentence: (names: string) => string,
  names: readonly string[],
  between: string,
  always = 1,
): string {
  for (let count = names.length; count > always; count--) {
    const text = sentence(names.slice(0, count).join(between));
    if (text.length <= longestPrompt) return text;
  }
  return sentence(names.slice(0, always).join(between));
}
