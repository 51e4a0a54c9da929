import {
  countsUnticked,
  type Known,
  type OwnBox,
  ownPaints,
  tickedPaints,
} from '../../paint/own-box.ts';
import { pluralize } from '../numbers.ts';

/** Until anything is ticked: what counts as hers, of these cards. */
export const untickedInWords = (cards: readonly Known[]): string =>
  `Nothing ticked yet: plans choose from ${usualInWords(cards)}.`;

/** 'the 25 paints most painters own and the paint of your own'. */
function usualInWords(cards: readonly Known[]): string {
  const counting = cards.filter(countsUnticked);
  const own = counting.filter(({ provenance }) => provenance === undefined).length;
  const hers = own > 0 ? ` and the ${pluralize(own, 'paint')} of your own` : '';
  return `the ${counting.length - own} paints most painters own${hers}`;
}

/** Of a plan with these paints: whether it was made from her box, or from what most painters own. */
export function madeFromInWords(box: OwnBox, used: readonly string[] = []): string {
  const owned = tickedPaints(box);
  const ticked = owned?.length ?? 0;
  if (owned && used.some((id) => !owned.includes(id)))
    return 'Made with paints that are not all in your box.';
  if (ticked > 0) return `Made from your own ${ticked === 1 ? 'paint' : `${ticked} paints`}.`;
  return `Made from the paints most painters own${ownPaints(box).length > 0 ? ', and your own' : ''}.`;
}

/** What the ticks mean for the plan, of these cards. */
export function boxInWords(box: OwnBox, cards: readonly Known[]): string {
  const ticked = tickedPaints(box)?.length ?? 0;
  if (ticked === 0) return untickedInWords(cards);
  if (ticked === 1) return '1 paint ticked: plans then have values only, in this one colour.';
  return `${ticked} paints ticked: plans choose from these.`;
}

const renamedWords: ReadonlyMap<string, string> = new Map([
  [
    'hue-cadmium-yellow',
    'In your box, “cadmium yellow, PY35” was measured from a substitute: it is now “cadmium yellow hue”. If your tube says PY35, tick that one instead.',
  ],
  [
    'hue-lemon-yellow',
    'In your box, “lemon yellow, PY175” was measured from a tube that does not name its pigment: it is now “lemon yellow hue”. If your tube says PY175, tick that one instead.',
  ],
]);

/** What a painter whose box held such a paint is told once; nothing for other ids. */
export const renamedInWords = (id: string): string | undefined => renamedWords.get(id);
