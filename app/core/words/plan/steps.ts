import type { Place } from '../../raster/size.ts';
import { namesInShort } from '../cautions.ts';
import { dryPrompt, leaveIt, wetnessSign } from '../drying/drying-words.ts';
import { formatAll, joinWords, openWithCount, pluralize } from '../numbers.ts';
import { sideInWords } from '../places.ts';
import { nameWhites } from './names.ts';

/** How the sheet is held while it is wet. */
export type Hold =
  | 'on its block'
  | 'soaked'
  | 'as it is'
  | 'gummed'
  | 'taped or clipped'
  | 'stretched'
  | 'taped all round';

const holds: Readonly<Record<Hold, string>> = {
  'on its block': 'Leave the sheet on its block.',
  soaked: 'Soak the sheet on both sides, lay it on a smooth board and take up the puddles.',
  'as it is': 'Lay the sheet on a board as it is, a clip at each corner.',
  gummed: 'Fix the sheet to a board all round with gummed tape or staples.',
  'taped or clipped': 'Tape or clip the sheet to a board.',
  stretched:
    'Stretch the sheet: wet both sides, fix it to a board all round with gummed tape, let it dry flat.',
  'taped all round': 'Tape the sheet to a board on all sides.',
};

const lowTack = 'Low-tack tape alone does not hold a wetted sheet.';

interface Whites {
  readonly count: number;
  readonly isSmall: boolean;
}

interface Marks {
  readonly count: number;
  /** Where most of them lie. */
  readonly place: Place;
  /** Letters. */
  readonly puddles: readonly string[];
}

const puddlesInWords = ({ puddles }: Marks): string =>
  `${pluralize(puddles.length, 'puddle')} ${joinWords(puddles)}`;
const mostlyAt = ({ count, place }: Marks): string =>
  `${count > 1 ? 'most of them ' : ''}${sideInWords(place)}`;

interface LastLights extends Whites {
  /** Some of them are marks that the picture shows. */
  readonly shown: boolean;
  readonly blade: boolean;
  /** Paints that must not be scraped, the reason for no blade; none where there is another. */
  readonly noDust: readonly string[];
}

function lastLights({ count, isSmall, shown, blade, noDust }: LastLights): string {
  const touch = `Bring back ${nameWhites(count, isSmall)}${shown ? ' shown' : ''}: a touch of opaque white with a small brush`;
  if (blade) return `${touch}, or a scrape with a blade.`;
  const why = noDust.length > 0 ? ` No blade: ${namesInShort(noDust)} must not be scraped.` : '';
  return `${touch}.${why}`;
}

/** What is done at all steps but washes, and what to watch there. */
export const stepSentences = {
  'prepare/sheet': ({ hold }: { readonly hold: Hold }) =>
    `${holds[hold]} Set out two jars of water, scraps of the same paper and what is listed.`,
  'prepare/plain': () => 'Fix the sheet to a board and set out two jars of water.',
  'prepare/soaked': () =>
    'Soaked for hours the size goes and colours bleed: some minutes are enough.',
  'prepare/low-tack': () => lowTack,
  'prepare/stretch-early': () => `That takes some hours: best the day before. ${lowTack}`,
  'prepare/cockles': () => 'Paper this thin cockles: stretch it if it has to lie flat.',
  'puddles/mix': ({ puddles }: { readonly puddles: number }) =>
    `Mix more than enough for the first wash. Brush ${pluralize(puddles, 'it', 'each')} on a scrap, let it dry, hold it beside the swatch.`,
  'puddles/judge-dry': () => 'Wet paint looks darker than it dries: judge it dry.',
  'transfer/draw': () =>
    'Draw only the outlines of the big shapes and the whites to keep, lightly, with an H pencil.',
  'transfer/no-scrubbing': () => 'No scrubbing with the rubber: it roughens the paper.',
  'mask/lay': ({ count, isSmall }: Whites) =>
    `Brush masking fluid over ${nameWhites(count, isSmall)} to mask, a little generously, on dry paper. Let it dry clear before any water comes near.`,
  'mask/paint-round': () => 'Paint round the other whites instead.',
  'mask/try': () => 'Try it on a scrap: soft paper tears.',
  'unmask/rub': () =>
    'Only when the whole sheet is bone dry: take the mask off with a crepe rubber or a clean cloth, towards the middle of each white.',
  'unmask/soften': () =>
    'Edges that are too sharp: touch them with a clean, barely damp brush and blot.',
  'dry/wait': () => dryPrompt.usual,
  'dry/wait-slow': () => dryPrompt.slow,
  'dry/leave': () => leaveIt,
  'dry/leave-by-now': () =>
    'The shine should be gone, the sheet is still cool: leave it. No water, no brush, until it is bone dry.',
  'dry/damp': () => 'Damp is the dangerous state: no water, no thin paint now.',
  'lift/blot': () =>
    'Where the edge of a light should melt, wet it with a clean brush, wait, and blot. Do not scrub.',
  'lift/stop-early': () => 'Soft or thin paper roughens quickly: stop early.',
  'splatter/tap': () =>
    'Cover what must stay clean, try it on a scrap, then tap the brush against a finger over the broken shapes only.',
  'splatter/specks': ({ noDust }: { readonly noDust: readonly string[] }) =>
    `Set specks with the point of a rigger over the broken shapes only. No splatter: ${namesInShort(noDust)} must not be flicked.`,
  'splatter/few': () =>
    'On dry paper the spots are hard and small. A few are enough, none in plain areas.',
  'details/plain': () => 'With the point of the brush set the small shapes shown, one touch each.',
  'details/set': (marks: Marks) =>
    `Set ${formatAll(marks.count, 'small shape')} shown, ${mostlyAt(marks)}, with the point of the brush from ${puddlesInWords(marks)}: a touch each.`,
  'details/leave-out': () => 'Leave some out rather than fuss: most belong where you want to look.',
  'accents/plain': () =>
    'With a small brush, nearly dry, and the darkest puddles, thicker than before, set the few darkest touches, most near the centre of interest.',
  'accents/set': (marks: Marks) =>
    `With a small brush and ${puddlesInWords(marks)}, thicker than before, set ${formatAll(marks.count, 'darkest touch', 'darkest touches')} shown, ${mostlyAt(marks)}.`,
  'accents/fluid': () =>
    'With the point of a small brush and fluid dark paint set the few darkest touches, most of them near the centre of interest.',
  'accents/fewer': () => 'Fewer than you want to.',
  'last-lights/touch': lastLights,
  'last-lights/white': () =>
    'Bring back the last whites with touches of opaque white and a small brush.',
  'last-lights/scrape': () =>
    'Scrape the last whites out of the dry paint with a blade, lightly, on cotton paper only.',
  'last-lights/fewer': () => 'Only on a bone-dry sheet, and fewer than you want to.',
  'last-lights/tears': () => 'No blade on this paper: it tears.',
  'last-look/squint': () =>
    'Stand back and squint at sheet and photo. Compare the whites, then the darks. If nothing calls, stop.',
  'whites/painted-over': ({ count, isSmall }: Whites) =>
    `${openWithCount(count, isSmall ? 'small white' : 'white')} may be painted over: ${pluralize(count, 'it comes', 'they come')} back at the end.`,
};

const lookAtSheet = `Look at the sheet. Bone dry ${wetnessSign['bone dry']}.`;

/** What is heard at the easel beside the prompts of steps: where the shine stands, the end of a wait. */
export const cueSentences = {
  'cue/dry': () => lookAtSheet,
  'cue/dry-again': () => `The sheet still waits. ${lookAtSheet}`,
  'cue/shine-half': () => 'Half of the shine is over: the last soft edges now.',
  'cue/shine-going': () => 'The shine may be going now. Nothing wet goes in any more.',
  'cue/shine-gone': () => 'The shine should be gone. Leave it alone until it is dry.',
  'cue/time-over': () => 'The time planned for this step is over.',
};
