import { dropsInMl, tablespoonMl, teaspoonMl } from '../../limits.ts';
import { formatCount, pluralize } from '../numbers.ts';

const quarters = ['', '¼', '½', '¾'];
const lessThanOne = ['', 'a quarter of a', 'half a', 'three quarters of a'];

/** '1½ teaspoons', 'half a teaspoon', of a whole number of quarters. */
function spoonsInWords(count: number, spoon: string): string {
  const whole = Math.floor(count / 4);
  if (whole === 0) return `${lessThanOne[count]} ${spoon}`;
  return `${whole}${quarters[count % 4]} ${pluralize(count / 4, spoon)}`;
}

/** '1 teaspoon', '2½ tablespoons', '15 drops' of what can be measured. */
function waterInWords(ml: number): string {
  const [drops, teaspoons, tablespoons] = [ml * dropsInMl, ml / teaspoonMl, ml / tablespoonMl];
  if (teaspoons < 0.25) return formatCount(Math.round(drops), 'drop');
  const isRound = tablespoons === 1 || tablespoons === 1.5 || tablespoons >= 2;
  return isRound
    ? spoonsInWords(Math.round(4 * tablespoons), 'tablespoon')
    : spoonsInWords(Math.round(4 * teaspoons), 'teaspoon');
}

/** '12 mm', '3.5 cm'. */
const stripInWords = (mm: number): string =>
  mm >= 10 && mm % 5 === 0 ? `${mm / 10} cm` : `${mm} mm`;

/** '7.5 ml' and so on. */
const mlInWords = (ml: number): string => `${ml < 10 ? Math.round(ml * 2) / 2 : Math.round(ml)} ml`;

/** What is mixed of one puddle: water and paint together, water alone, ml; of each paint the strip, mm. */
interface Measured {
  readonly ml: number;
  readonly waterMl: number;
  readonly paints: readonly { readonly paint: string; readonly mm: number }[];
}

/**
 * 'About 10 ml: 2 teaspoons of water, 3 cm of ultramarine blue, 5 mm of burnt sienna.' Lengths are those of a
 * strip from the tube.
 */
export function amountInWords(
  { ml, waterMl, paints }: Measured,
  nameOf: (paint: string) => string,
): string {
  const strips = paints
    .map(({ paint, mm }) => `${stripInWords(mm)} of ${nameOf(paint)}`)
    .join(', ');
  if (waterMl === 0) return `Straight from the tube, no water: ${strips}.`;
  const all = ml < 1 ? 'Under 1 ml' : `About ${mlInWords(ml)}`;
  return `${all}: ${waterInWords(waterMl)} of water, ${strips}.`;
}

/** What to know of amounts, shown once beside them. */
export const aboutAmounts =
  'More than enough, squeezed from a tube with a 5 mm opening. From pans go by the swatch: more paint or more water until a scrap dries to it.';
