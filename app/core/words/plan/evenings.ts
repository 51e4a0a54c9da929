import type { PassagesChoice } from '../../decisions/plan-edit.ts';
import { hoursInWords } from '../minutes.ts';
import { capitalize, spellCount, spellOrdinal } from '../numbers.ts';
import { sayTitle, type TitleSaid } from './titles.ts';
import { washesInWords } from './washes-why.ts';

/** 'Second evening'. */
export const eveningName = (evening: number): string =>
  evening <= 4 ? `${capitalize(spellOrdinal(evening))} evening` : `Evening ${evening}`;

/** One evening of a plan, minutes. */
interface EveningMinutes {
  readonly evening: number;
  readonly likely: number;
  readonly likelyWait: number;
}

/** 'about 1 h 40 min, 55 min of it waiting'. */
function timeInWords({ likely, likelyWait }: EveningMinutes): string {
  const waiting = likelyWait > 0 ? `, ${hoursInWords(likelyWait)} of it waiting` : '';
  return `about ${hoursInWords(likely)}${waiting}`;
}

/** Time of a plan, every evening of it: 'First evening about 2 h, of it 1 h waiting. Second evening …'. */
export function planTimeInWords(times: readonly EveningMinutes[]): string {
  const [only] = times;
  if (!only) return '';
  if (times.length === 1) return `${capitalize(timeInWords(only))}.`;
  return times.map((time) => `${eveningName(time.evening)} ${timeInWords(time)}.`).join(' ');
}

interface Longest {
  /** Likely minutes of the longest evening. */
  readonly minutes: number;
}

const orders: Readonly<Record<PassagesChoice, string>> = {
  'ground first': 'Background first',
  'subject first': 'Subject first',
  together: 'Background and subject together',
};

/** Why ground and subject are proposed in an order, and which it is. */
export type PassagesWhy =
  | 'line lost'
  | 'ground soft'
  | 'subject lighter'
  | 'ground lighter'
  | 'neither';

const passagesWhy: Readonly<Record<PassagesWhy, string>> = {
  'line lost': `${orders.together}: most of the line between them is lost.`,
  'ground soft': `${orders['ground first']}: it is soft and the subject crisp.`,
  'subject lighter': `${orders['subject first']}: it is the lighter; the darker background is then cut round it.`,
  'ground lighter': `${orders['ground first']}: it is the lighter, the subject sets the edge.`,
  neither: `${orders['ground first']}: neither is softer or lighter, and the subject is easier to place on it.`,
};

interface Order {
  readonly order: PassagesChoice;
}

/** How a plan fits the time she has, what ends an evening, what was left out for it, and in what order it goes. */
export const eveningSentences = {
  'passages/proposed': ({ why }: { readonly why: PassagesWhy }) => passagesWhy[why],
  'passages/asked-instead': ({ order, why }: Order & { readonly why: PassagesWhy }) =>
    `${orders[order]}, as you asked; proposed was ${passagesWhy[why].charAt(0).toLowerCase()}${passagesWhy[why].slice(1)}`,
  'passages/asked': ({ order }: Order) => `${orders[order]}, as you asked.`,
  'evening/still-takes': ({ minutes, evenings }: Longest & { readonly evenings: number }) =>
    `Cut down as far as it goes, ${evenings > 1 ? 'the longest evening' : 'it'} still takes about ${hoursInWords(minutes)}.`,
  'evening/ends': ({ evening, masked }: { readonly evening: number; readonly masked: boolean }) =>
    `The ${eveningName(evening).toLowerCase()} ends here. Leave the sheet on its board to dry, flat and out of the sun.${
      masked
        ? ' Masking fluid lies on it: go on within the days its label allows, else it tears the paper.'
        : ''
    }`,
  'evening/goes-on': ({ evening }: { readonly evening: number }) =>
    `${eveningName(evening)}: the sheet must be bone dry and flat. Wet your puddles again, or mix them afresh, and try them on the scrap.`,
  'evening/left-out': ({ titles }: { readonly titles: readonly (TitleSaid | string)[] }) =>
    `Left out, as the plan is long enough: ${titles.map((title) => sayTitle(title).toLowerCase()).join(' and ')}.`,
  'water/less-dry': () =>
    'Less water than usual: let the brush drip off, lay it once and lift the bead, so that it dries sooner.',
  'water/less-wet': () =>
    'Less water than usual: wet the sheet once and thinly, and let it sink to a soft sheen before you paint.',
  'given-up/water': () => 'Less water in the washes: they dry sooner, and stay open for less long.',
  'given-up/details': () => 'No small details: only the few darkest touches are set at the end.',
  'given-up/wet-paper': () =>
    'All washes on dry paper: soften edges with a damp brush instead of painting wet-in-wet.',
  'given-up/wash': ({ washes }: { readonly washes: number }) =>
    `${washesInWords(washes)} instead of ${spellCount(washes + 1)}: the lighter values share one.`,
  'given-up/finishing': () => 'No splatter, no lifting and no opaque lights.',
  'dryer/fits-whole': ({ minutes }: Longest) =>
    `With a hair dryer it would fit as it is, with nothing given up: about ${hoursInWords(minutes)}.`,
  'dryer/fits-more-washes': ({ minutes }: Longest) =>
    `With a hair dryer it would fit with more washes: about ${hoursInWords(minutes)}.`,
  'dryer/fits-more': ({ minutes }: Longest) =>
    `With a hair dryer it would fit with less given up: about ${hoursInWords(minutes)}.`,
  'dryer/fits': ({ minutes }: Longest) =>
    `With a hair dryer it would fit: about ${hoursInWords(minutes)}.`,
  'dryer/takes': ({ minutes }: Longest) =>
    `With a hair dryer it would take about ${hoursInWords(minutes)}.`,
};
