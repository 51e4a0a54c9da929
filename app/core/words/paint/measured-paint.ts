import type { DraftCaution, OtherHue } from '../../paint/measure/paint-measure.ts';
import type { PaintChange, RefinedPaint } from '../../paint/measure/refine-paints.ts';
import type { SureWhy } from '../../paint/paint.ts';
import { capitalize, joinWords, pluralize, spellCount } from '../numbers.ts';

const sureWhys = {
  'white-on-white':
    'A white on white paper shows next to nothing. Paint its steps across a black line as well, and measure again.',
  disagree:
    'The steps do not agree with each other. See that each frame lies on its own patch and carries the right name; a patch that shines or is still damp misleads.',
  'only-strong':
    'Only strong steps: how far it colours, and whether it hides what is under it or lets it shine through, can not be told apart. Add thinner steps, each twice as thin, until the paper shines through; a step over a black line helps too.',
  uneven: 'Not every frame lies on one even colour. Once each does, measure again.',
} as const;

/** How sure a measured paint is and what would help; as it was stored where a box of before has a sentence. */
export function sureWhyInWords(why: SureWhy | string): string {
  if (typeof why === 'string') return why;
  if (!('steps' in why)) return sureWhys[why.why];
  const steps = spellCount(why.steps);
  if (why.why === 'few-steps')
    return `With only ${steps} steps mixes may come out a little different. Five, each twice as thin, would tell more.`;
  return why.why === 'hiding-unseen'
    ? `${capitalize(steps)} steps that agree: by itself it should come out close. How it mixes and hides is less sure: a step painted over a black line would tell.`
    : `${capitalize(steps)} steps and what lies over the black line agree: alone and in mixes it should come out close.`;
}

/** Asked where washes of the same depth differ in hue: of two colours by name, or of two kinds of the same. */
export function otherHueInWords({ called, looks, is }: OtherHue): string {
  const names = called.join(', ');
  const seen =
    looks === is
      ? `These steps look another ${looks} than ${names} usually is.`
      : `These steps look ${looks}, but ${names} is ${is}.`;
  return `${seen} Is this the paint you mean? See that the photo is the right one and that each frame lies on its own patch. If it is right, keep it all the same.`;
}

/** What she should look at again, in a sentence. */
export function draftCautionInWords(told: DraftCaution): string {
  if (told.caution === 'backward')
    return 'Step 1 looks paler than the last step: the ladder seems to be named from the wrong end. Turn it round and measure again.';
  const count = told.frames.length;
  const frames = `${pluralize(count, 'Frame')} ${joinWords(told.frames.map(String))}`;
  const them = pluralize(count, 'it', 'each');
  return told.caution === 'slope'
    ? `${frames} ${pluralize(count, 'runs', 'run')} from pale to dark: put ${them} where its wash is even, or make it smaller.`
    : `${frames} ${pluralize(count, 'lies', 'lie')} on more than one colour: move ${them} to the middle of its patch, or make it smaller.`;
}

const changeWords: Partial<Record<PaintChange, string>> = {
  hiding: 'hiding more',
  clear: 'more transparent',
};

/** What changed in a paint, a sentence: 'my blue: bluer and weaker than it was taken for.' */
export function changesInWords({ name, changes }: RefinedPaint['told']): string {
  if (changes.length === 0) return `${name}: as it was taken for, hardly changed.`;
  const how = joinWords(changes.map((change) => changeWords[change] ?? change));
  return `${name}: ${how} than it was taken for.`;
}

/** Where the optics of a paint of her own are from: the name of the paint it behaves like, or her photo. */
export const opticsInWords = (like: string | null): string =>
  like === null ? 'Measured from a photo' : `Not measured: behaves like ${like}`;

interface TeachersPaints {
  readonly names: readonly string[];
  /** They came into her box already. */
  readonly came: boolean;
  /** She has ticked paints. */
  readonly ticked: boolean;
}

/** Where paints of a teacher's own come to when a plan of theirs is kept, or came to. */
export function measuredPaintsInWords({ names, came, ticked }: TeachersPaints): string {
  const count = names.length;
  const whose = pluralize(count, 'is the teacher’s own paint', 'are the teacher’s own paints');
  const comes = came
    ? `${pluralize(count, 'it', 'they')} came`
    : `kept, ${pluralize(count, 'it comes', 'they come')}`;
  const counts = ticked
    ? 'not ticked'
    : `and ${pluralize(count, 'counts', 'count')} as yours until you tick your paints`;
  return `${capitalize(joinWords(names))} ${whose}: ${comes} into your box, ${counts}.`;
}
