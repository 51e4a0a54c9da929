import { familyNameIn } from '../plan/family-name-in.ts';
import { mixWordsIn } from '../plan/paint-name-in.ts';
import type { WashPlan } from '../plan/plan.ts';
import { placeInWords } from '../raster/size.ts';
import type { Reading } from '../reading/reading.ts';
import { capitalize, joinWords, lengthInWords, pluralize, spellCount } from '../words/numbers.ts';
import { bandWord, formatPercent } from '../words/reading-words.ts';
import type {
  Advice,
  Comparison,
  EdgeVerdict,
  JudgedComparison,
  LightnessVerdict,
  PhotoTip,
  Refusal,
  ShapeVerdict,
} from './comparison.ts';

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

/** 'the dark dull green on the left', 'the white in the middle'. */
function shapeInWords(
  slot: number,
  at: readonly [number, number],
  plan: InPlan,
  reading: InReading,
): string {
  const own = plan.slots[slot];
  const place = placeInWords(at);
  if (!own) return `the shape ${place}`;
  if (own.reserve) return `the white ${place}`;
  const name = familyNameIn(plan, reading)(own.family);
  return `the ${bandWord(own.band, reading.bands.length)} ${name} ${place}`;
}

/** 'The dark dull green on the left is clearly too light, and warmer than planned.' */
export function verdictInWords(shape: ShapeVerdict, plan: InPlan, reading: InReading): string {
  const name = capitalize(shapeInWords(shape.slot, shape.at, plan, reading));
  const drift = shape.drift.length > 0 ? joinWords(shape.drift) : '';
  if (!drift) return `${name} is ${verdicts[shape.verdict]}.`;
  if (shape.verdict === 'same') return `${name} has its value, but is ${drift} than planned.`;
  return `${name} is ${verdicts[shape.verdict]}, and ${drift} than planned.`;
}

/** 'The edge in the middle, 6 cm long, came out harder than decided.' */
export const edgeVerdictInWords = ({ at, lengthMm, came }: EdgeVerdict): string =>
  `The edge ${placeInWords(at)}, ${lengthInWords(lengthMm)} long, came out ${came} than decided.`;

const stepTitle = (n: number | undefined, { steps }: InPlan): string => {
  const title = steps.find((step) => step.n === n)?.title ?? 'next wash';
  return title.charAt(0).toLowerCase() + title.slice(1);
};

/** What one piece of advice says: what is off, and what mends it. */
export function adviceInWords(advice: Advice, plan: InPlan, reading: InReading): string {
  const { slot, at, parts = [], consistency, difference } = advice;
  const shape = shapeInWords(slot, at, plan, reading);
  const off = `${capitalize(shape)} is ${Math.abs(difference) < 8 ? 'slightly' : 'clearly'} too ${difference > 0 ? 'light' : 'dark'}`;
  const mix = mixWordsIn(plan)(parts);
  const like = consistency ? `, like ${consistency}` : '';
  switch (advice.mending) {
    case 'glaze':
      return `${off}: when it is bone dry, glaze it with ${mix}${like}.`;
    case 'lay-missing':
      return `${capitalize(shape)} is still missing: lay it with ${mix}${like}.`;
    case 'stronger-next':
      return `${off}: lay the ${stepTitle(advice.step, plan)} stronger there, ${mix}${like}.`;
    case 'weaker-next':
      return `${off}: lay the ${stepTitle(advice.step, plan)} weaker there, ${mix}${like}.`;
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
  const lost = whites.filter(({ kept, areaMm2 }) => !kept && areaMm2 >= leastWhiteMm2).length;
  const all = `${formatPercent(whole.within4)} of the sheet has its planned value`;
  if (lost === 0) return `${all}; the whites are kept.`;
  return `${all}; ${spellCount(lost)} ${pluralize(lost, 'white')} ${lost === 1 ? 'is' : 'are'} lost.`;
}

/** Smaller whites are not counted one by one, mm2. */
const leastWhiteMm2 = 25;
