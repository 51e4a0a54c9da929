import {
  type Advice,
  type BandVerdict,
  type Comparison,
  type EdgeVerdict,
  isLost,
  type JudgedComparison,
  type LightnessVerdict,
  type PhotoTip,
  type Refusal,
  type ShapeVerdict,
  type SheetWetness,
  type WhiteVerdict,
  whitesLostIn,
} from '../../compare/comparison.ts';
import type { SheetPlace } from '../../compare/find-sheet.ts';
import { placedShape } from '../../compare/placed-shape.ts';
import { mixSaid } from '../../plan/paint-name-in.ts';
import type { WashPlan } from '../../plan/plan.ts';
import type { Reading } from '../../reading/reading.ts';
import { capitalize, joinWords, lengthInWords, pluralize, spellCount } from '../numbers.ts';
import { placeInWords } from '../places.ts';
import { mixLikeInWords, namePlacedShape } from '../plan/mending.ts';
import { words } from '../plan/words.ts';
import { bandWord, formatPercent } from '../reading-words.ts';

type InPlan = Pick<WashPlan, 'palette' | 'optics' | 'slots' | 'steps'>;
type InReading = Pick<Reading, 'bands' | 'families'>;

const refusals: Readonly<Record<Refusal, string>> = {
  shiny: 'Wait until the shine has gone: wet paint looks darker than it dries.',
  'nothing-painted': 'Nothing is painted at this stage, so there is nothing to compare.',
  'no-sheet':
    'The sheet was not found in this photo. Put it on a board of another tone, all four corners in sight, or set the corners yourself.',
  'not-sure':
    'It is not sure where the sheet lies in this photo, so nothing is judged. Set the corners yourself, and look whether this is the stage you mean.',
  'no-light':
    'Too little of the sheet can be seen to judge its light. Photograph it whole, in even light.',
};

export const refusalInWords = (refused: Refusal): string => refusals[refused];

const tips: Readonly<Record<PhotoTip, string>> = {
  'off-the-photo': 'Part of the sheet is off the photo: step back a little.',
  clipped: 'The lights are blown out: let the camera expose for the paper, a little darker.',
  glare: 'Something shines on the sheet: turn it away from the lamp or the window.',
  shadow:
    'A shadow lies on the sheet: stand so that neither you nor the camera is in its light. What lies in the shadow is not judged.',
  'no-bare-paper':
    'No bare paper was found, so white is a guess: leave a border of bare paper in sight, or touch a spot that is paper.',
  uneven:
    'The light falls off across the sheet: photograph it in the shade outdoors or further from the lamp.',
  'coloured-light': 'The light is strongly coloured: daylight tells colours more truly.',
  coarse: 'The sheet is small in the photo: go nearer.',
};

export const tipInWords = (tip: PhotoTip): string => tips[tip];

const verdicts: Readonly<Record<LightnessVerdict, string>> = {
  same: 'as planned',
  'slightly lighter': 'slightly too light',
  'clearly lighter': 'clearly too light',
  'slightly darker': 'slightly too dark',
  'clearly darker': 'clearly too dark',
};

/** 'The dark dull green on the left is clearly too light, and warmer than planned.' */
export function verdictInWords(shape: ShapeVerdict, plan: InPlan, reading: InReading): string {
  const name = capitalize(namePlacedShape(placedShape(shape.slot, shape.at, plan, reading)));
  const drift = shape.drift.length > 0 ? joinWords(shape.drift) : '';
  if (!drift) return `${name} is ${verdicts[shape.verdict]}.`;
  if (shape.verdict === 'same') return `${name} has its value, but is ${drift} than planned.`;
  return `${name} is ${verdicts[shape.verdict]}, and ${drift} than planned.`;
}

/** 'The edge in the middle, 6 cm long, came out harder than planned.' */
export const edgeVerdictInWords = ({ at, lengthMm, came }: EdgeVerdict): string =>
  `The edge ${placeInWords(at)}, ${lengthInWords(lengthMm)} long, came out ${came} than planned.`;

const stepTitle = (n: number | undefined, { steps }: InPlan): string => {
  const title = words(steps.find((step) => step.n === n)?.title ?? 'next wash');
  return title.charAt(0).toLowerCase() + title.slice(1);
};

/** What one piece of advice says: what is off, and what mends it. */
export function adviceInWords(advice: Advice, plan: InPlan, reading: InReading): string {
  const { slot, at, parts = [], consistency, difference } = advice;
  const shape = namePlacedShape(placedShape(slot, at, plan, reading));
  const off = `${capitalize(shape)} is ${Math.abs(difference) < 8 ? 'slightly' : 'clearly'} too ${difference > 0 ? 'light' : 'dark'}`;
  const mixed = mixLikeInWords({
    mix: mixSaid(plan, parts),
    ...(consistency && { like: consistency }),
  });
  switch (advice.mending) {
    case 'glaze':
      return `${off}: when it is bone dry, glaze it with ${mixed}.`;
    case 'lay-missing':
      return `${capitalize(shape)} is still missing: lay it with ${mixed}.`;
    case 'stronger-next':
      return `${off}: lay the ${stepTitle(advice.step, plan)} stronger there, ${mixed}.`;
    case 'weaker-next':
      return `${off}: lay the ${stepTitle(advice.step, plan)} weaker there, ${mixed}.`;
    case 'lift':
      return `${off}: when it is dry, wet it and lift paint with a clean damp brush.`;
    case 'opaque-white':
      return `${off}: set it back in opaque white at the end; it is small enough.`;
    case 'soften-edge':
      return `The edge of ${shape} is harder than you decided: wet it with a clean damp brush and soften it.`;
    case 'sharpen-edge':
      return `The edge of ${shape} is softer than you decided: when it is dry, draw it again with the darker mix.`;
    case 'leave-as-is':
      return `${off}, and neither a glaze nor lifting mends it well: let it be, and keep the other values apart from it.`;
  }
}

/** What matters most in one sentence. */
export function comparisonInWords(
  comparison: Comparison,
  plan: InPlan,
  reading: InReading,
): string {
  if (comparison.refused !== null) return refusalInWords(comparison.refused);
  const [first] = comparison.advice;
  return first
    ? adviceInWords(first, plan, reading)
    : 'Good: leave it. All that counts is as planned.';
}

/** How the whole holds together, in a sentence. */
export function wholeInWords({ whole, whites }: JudgedComparison): string {
  const lost = whitesLostIn(whites);
  const all = `${formatPercent(whole.within4)} of the sheet has its planned value`;
  if (lost === 0) return `${all}; the whites are kept.`;
  return `${all}; ${spellCount(lost)} ${pluralize(lost, 'white')} ${lost === 1 ? 'is' : 'are'} lost.`;
}

/** The verdict before all else: 'Good: leave it', or how many things are worth doing. */
export function headlineOf({ advice }: Pick<JudgedComparison, 'advice'>): string {
  if (advice.length === 0) return 'Good: leave it';
  const are = advice.length === 1 ? 'is' : 'are';
  return `${capitalize(spellCount(advice.length))} ${pluralize(advice.length, 'thing')} ${are} worth doing`;
}

/** How she says her sheet is. */
export const wetnessWords: Readonly<Record<SheetWetness, string>> = {
  shiny: 'Shiny',
  satin: 'Satin',
  dry: 'Bone dry',
};

/** How sure it is where the sheet lies; null: nothing was found. */
export function surenessInWords(place: SheetPlace | null): string {
  if (!place)
    return 'The sheet was not found by itself: draw the corners to those of your painting.';
  const { sureness } = place;
  if (sureness === 'sure') return 'The sheet was found, and the painting on it fits: sure.';
  return sureness === 'fairly sure'
    ? 'The sheet was found, but only fairly surely: see whether the corners lie on those of your painting.'
    : 'Not sure where the sheet lies: draw the corners to those of your painting.';
}

/** 'Light: slightly too dark.' */
export const bandVerdictInWords = ({ band, verdict }: BandVerdict, count: number): string =>
  `${capitalize(bandWord(band, count))}: ${verdicts[verdict]}.`;

/** Every white that was lost, largest first, a sentence each. */
export const lostWhitesInWords = (whites: readonly WhiteVerdict[]): string[] =>
  whites
    .filter(isLost)
    .sort((one, two) => two.areaMm2 - one.areaMm2)
    .map(({ at, areaMm2 }) => `The white ${placeInWords(at)}, ${cm2InWords(areaMm2)}, is lost.`);

const cm2InWords = (mm2: number): string =>
  mm2 < 150 ? 'about 1 cm²' : `about ${Math.round(mm2 / 100)} cm²`;

/** Correlations nearer than this are alike (own), and ends of the range within this are the same, L* (own). */
const alike = 0.03;
const sameEnd = 5;

/** Whether it holds together from across the room, in a sentence or two. */
export function roomInWords({ whole }: Pick<JudgedComparison, 'whole'>): string {
  const { likeReference, expectedLikeReference, expectedRange, measuredRange } = whole;
  const [lights, darks] = [0, 1].map(
    (end) => (measuredRange[end as 0 | 1] ?? 0) - (expectedRange[end as 0 | 1] ?? 0),
  ) as [number, number];
  const ends = [
    ...(Math.abs(lights) >= sameEnd ? [`its lights are ${lights > 0 ? 'lighter' : 'darker'}`] : []),
    ...(Math.abs(darks) >= sameEnd ? [`its darks are ${darks > 0 ? 'lighter' : 'darker'}`] : []),
  ];
  const range = ends.length > 0 ? ` ${capitalize(joinWords(ends))} than planned.` : '';
  if (likeReference === null || expectedLikeReference === null)
    return range.trim() || 'Its lights and darks are as far apart as planned.';
  const holds =
    likeReference >= expectedLikeReference - alike
      ? 'It holds together: in grey it is as like the reference as it can be at this stage.'
      : 'Seen in grey, it is less like the reference than it should be by now.';
  return `${holds}${range}`;
}
