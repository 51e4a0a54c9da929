import type { Range } from '../../colour/lab.ts';
import type { Wetness } from '../../drying/wetness.ts';
import { oppositeSide, type Side } from '../../raster/size.ts';
import { minutesInWords } from '../minutes.ts';
import { edgeOfBoard, sideInWords } from '../places.ts';
import { fittedNames, type MeetingSaid, nameMeeting, nameShape, type ShapeSaid } from './names.ts';

interface Graded {
  readonly shape: ShapeSaid;
  /** Where it is strong. */
  readonly strong: Side;
}

interface Shapes {
  readonly shapes: readonly ShapeSaid[];
}

const withShapes = (sentence: (shapes: string) => string, { shapes }: Shapes): string =>
  fittedNames(sentence, shapes.map(nameShape), ' and ');

/** How a smaller technique is done inside its step. */
export const techniqueSentences = {
  'technique/graded-wet': ({ shape, strong }: Graded) =>
    `Lay ${nameShape(shape)} strong ${sideInWords(strong)}, thin ${sideInWords(oppositeSide(strong))}; then raise ${edgeOfBoard(strong)} so that it runs even.`,
  'technique/graded-dry': ({ shape, strong }: Graded) =>
    `Begin ${nameShape(shape)} strong ${sideInWords(strong)}, that edge of the board raised; more water at each stroke, thin ${sideInWords(oppositeSide(strong))}.`,
  /** The first `always` are hers, and never left out. */
  'technique/merging': ({
    edges,
    always,
  }: {
    readonly edges: readonly MeetingSaid[];
    readonly always: number;
  }) =>
    fittedNames(
      (names) => `Let these merge, painted in one go: ${names}.`,
      edges.map(nameMeeting),
      '; ',
      always,
    ),
  'technique/charging': ({ edges }: { readonly edges: readonly MeetingSaid[] }) =>
    fittedNames(
      (into) => `Drop ${into} while it shines, a little thicker than what is there. Let it run.`,
      edges.map(nameMeeting),
      ', ',
    ),
  'technique/dry-brush': (shapes: Shapes) =>
    withShapes(
      (names) =>
        `For the broken texture of ${names}, blot the loaded brush, hold it low and drag it: only the tops of the paper take paint.`,
      shapes,
    ),
  'technique/water-drops': (shapes: Shapes) =>
    withShapes(
      (names) =>
        `As the shine is about to go, flick a few drops of clean water on ${names}: they open soft lights. Cover the rest.`,
      shapes,
    ),
  'technique/lifting': (shapes: Shapes) =>
    withShapes(
      (names) =>
        `Once the shine has gone, draw the small soft lights out of ${names} with a clean thirsty brush. Add no water.`,
      shapes,
    ),
  'technique/scraping': () =>
    'On cotton paper a sharp blade, drawn flat and lightly, takes the paint off for a sparkle. The very last thing: nothing goes over it.',
  'technique/round-subject': () =>
    'Cut the dark background round the subject with the point of the brush: it makes the edge. Feather it where the line is soft.',
  'technique/round-light': (shapes: Shapes) =>
    withShapes(
      (names) => `Paint the dark round ${names}: their edge stays crisp. Soften a few edges away.`,
      shapes,
    ),
};

/**
 * When a technique is done: the sign to look for, and the minutes after the stroke. The shine may go at either end
 * of its clock, so both are said: the latest alone would promise too much.
 */
export function techniqueWindow(
  { paper, minutes }: { readonly paper: Wetness; readonly minutes: Range | null },
  shineMinutes: Range,
): string {
  if (minutes === null) return `on ${paper} paper`;
  switch (paper) {
    case 'satin':
      return `as the shine goes, after ${minutesInWords(minutes)}`;
    case 'damp':
      return `once the shine has gone, ${minutesInWords(minutes)} after the stroke`;
    default:
      return `while it shines; the shine goes in ${minutesInWords(shineMinutes)}`;
  }
}
