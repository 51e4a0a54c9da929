import type { Side } from '../../raster/size.ts';
import { edgeOfBoard } from '../places.ts';
import { type SaidBy, sayBy } from './said.ts';

/** Brushes by what they are; round numbers have no standard. */
export const brushNames = {
  'brush/large-flat': () => 'a large flat (40 to 50 mm) or a mop',
  'brush/flat': () => 'a flat (20 to 25 mm) or a mop',
  'brush/mop': () => 'a mop or a round 12',
  'brush/round-12': () => 'a round 12',
  'brush/round-8': () => 'a round 8',
  'brush/round-6': () => 'a round 6',
  'brush/rigger': () => 'a rigger',
  'brush/dry': () => 'an old flat or a round 8',
  'brush/small-shapes': () => 'a round 6 for the small shapes',
  'brush/edges': () => 'a clean damp brush for the edges',
  'brush/mask': () => 'an old small brush drawn over soap first',
  'brush/clean': () => 'a clean round 8',
  'brush/old': () => 'an old round 8',
  'brush/lines': () => 'a rigger for lines',
  'brush/lights': () => 'a round 2 or a rigger',
  'brush/damp': () => 'a clean damp brush',
};
export type BrushSaid = SaidBy<typeof brushNames>;
const nameBrush = sayBy(brushNames);

/** Of older plans the brushes are one text, '; ' between them. */
export type BrushesSaid = readonly BrushSaid[] | string;

/** The brushes of a step, each by its name. */
export const brushesInWords = (brushes: BrushesSaid = []): string[] =>
  typeof brushes === 'string' ? brushes.split('; ') : brushes.map(nameBrush);

/** What a brush is when it is not said what for. */
const plain: Partial<Record<BrushSaid['say'], BrushSaid>> = {
  'brush/small-shapes': { say: 'brush/round-6' },
  'brush/edges': { say: 'brush/damp' },
};

/** The same by their names alone, as they are laid out: what each is for is said at the step. */
export const plainBrushes = (brushes: BrushesSaid = []): string[] =>
  typeof brushes === 'string'
    ? brushes.split('; ').map((name) => name.replace(/ for the .*$/, ''))
    : brushes.map((brush) => nameBrush(plain[brush.say] ?? brush));

interface Tilted {
  /** About so many degrees. */
  readonly degrees: number;
}
interface Raised extends Tilted {
  readonly raised: Side;
}

/** How the board lies. */
export const boardSentences = {
  'board/flat': () => 'flat',
  'board/flat-then-raised': ({ degrees, raised }: Raised) =>
    `flat while you wet it; then ${edgeOfBoard(raised)} raised about ${degrees}°, until the shine starts to go`,
  'board/flat-colours-stay': () => 'flat, so that the colours stay where they are laid',
  'board/flat-thick': () => 'flat: paint so thick does not run',
  'board/flat-drops': () => 'flat: drops run on a slope',
  'board/raised': ({ degrees, raised }: Raised) =>
    `tilted about ${degrees}°, ${edgeOfBoard(raised)} raised: the wash runs from strong to thin`,
  'board/bead': ({ degrees }: Tilted) =>
    `tilted about ${degrees}°, so that a bead gathers and runs down with you`,
  'board/strokes': ({ degrees }: Tilted) =>
    `tilted about ${degrees}°, so that each stroke gathers at its lower edge`,
};
export type BoardSaid = SaidBy<typeof boardSentences>;
