import type { Lab, Range } from '../colour/lab.ts';
import { plainFloor, type Surface } from '../colour/surface.ts';
import type { PassagesChoice, Technique } from '../decisions/plan-edit.ts';
import type { Wetness } from '../drying/wetness.ts';
import type { Consistency } from '../paint/consistency.ts';
import type { AmountUnit } from '../paint/former-amounts.ts';
import type { LaidMix, Part } from '../paint/mix.ts';
import type { Paint } from '../paint/paint.ts';
import type { ToneRange, Warning, WarningCode } from '../reading/reading.ts';
import type { Slot } from '../reading/slot.ts';
import type { Mark } from './details/mark.ts';
import type { Meeting, Run } from './runs/run.ts';

/** A smaller technique inside the step that makes its stroke. */
type SmallTechniqueName =
  | 'graded wash'
  | 'merging'
  | 'charging'
  | 'negative painting'
  | 'dry brush'
  | 'water drops'
  | 'lifting'
  | 'scraping';

/** One such technique: where, how, and when. */
export interface SmallTechnique {
  readonly technique: SmallTechniqueName;
  /** One sentence, at most about 160 signs. */
  readonly text: string;
  /** The state the paper must be in. */
  readonly paper: Wetness;
  /** The window, minutes from the end of the stroke it belongs to; null where it does not run out. */
  readonly minutes: Range | null;
}

/** Named in every plan; raised when the same reading may give another plan. */
export const planEngine = 'plan-16';

/** One strength of a puddle: the same paints and parts at another load, for some bands only. */
export interface Strength {
  readonly bands: readonly number[];
  readonly load: number;
  readonly consistency: Consistency;
  readonly target: Lab | null;
  readonly expected: Lab;
  /** The same while wet; missing in older plans. */
  readonly expectedWet?: Lab;
}

/**
 * What one wash puts on one family of one passage. One row per wash x passage x family.
 * `parts` is empty and `load` 0 where the family has nothing to paint in this wash or later.
 */
export interface Mix {
  readonly id: string;
  /** Rows that are painted from the same puddle carry the same name; null where nothing is painted. */
  readonly puddle: string | null;
  /** 1 is the first wash. */
  readonly wash: number;
  readonly passage: string;
  readonly family: number;
  readonly parts: readonly Part[];
  /** Tube paint laid, ml on a square metre, shared out by the parts. Before paints had a strength: pale washes. */
  readonly load: number;
  readonly consistency: Consistency;
  /** Planned colour of the lightest band this wash finishes; null where the family has no shape there. */
  readonly target: Lab | null;
  /** Dry colour of this wash over those before it, on the paper. */
  readonly expected: Lab;
  /** The same while wet: darker and stronger. */
  readonly expectedWet: Lab;
  /** Where lighter bands share this wash: the same puddle thinner. */
  readonly weaker?: Strength;
  /** What it is to meet wet, as its shapes change in hue; left out: nothing, or the plan does not run. */
  readonly meets?: Meeting;
  /** Sentences about the puddle: mud, colours that may run together instead. Left out: none. */
  readonly notes?: readonly string[];
}

export type StepKind =
  | 'prepare'
  | 'puddles'
  | 'transfer'
  | 'mask'
  | 'wash'
  | 'dry'
  | 'unmask'
  | 'lift'
  | 'splatter'
  | 'details'
  | 'accents'
  | 'last-lights'
  | 'last-look';

/** A part of a wash that is painted another way than the rest. */
export interface WashArea {
  /** 'the blue at the top', 'the rest'. */
  readonly name: string;
  readonly slots: readonly number[];
  readonly technique: Technique;
  readonly paper: Wetness;
  /** As of the step. */
  readonly brush?: string;
  readonly board?: string;
}

export interface Step {
  /** kind / passage / wash: stable when the plan is made again. */
  readonly key: string;
  /** 1, 2, 3 ... in order. */
  readonly n: number;
  readonly kind: StepKind;
  /** A few words: 'First wash'. */
  readonly title: string;
  /** The prompt at the easel: one or two sentences, at most about 160 signs. */
  readonly prompt: string;
  /** What to watch while doing it; may be empty. */
  readonly watch: string;
  /** Bands it targets (values are read from the reading's bands). */
  readonly bands: readonly number[];
  readonly families: readonly number[];
  /** Slots touched: indices into the plan's slots. All else is dimmed on the screen. */
  readonly slots: readonly number[];
  /** Ids of the mixes used. */
  readonly mixes: readonly string[];
  /** State the paper must be in before she starts. */
  readonly paper: Wetness;
  readonly technique: Technique;
  /** Where a wash is painted in two ways, in the order they are done; left out: all in the one above. */
  readonly areas?: readonly WashArea[];
  /** Strokes to soften within this very step, in words; may be empty. */
  readonly soften: string;
  /** Smaller techniques inside this step, in the order they are done; left out: none. */
  readonly touches?: readonly SmallTechnique[];
  /** The brushes, in words with '; ' between them; left out where none is needed. */
  readonly brush?: string;
  /** How the board lies, in words; left out where it does not matter. */
  readonly board?: string;
  /** Water put down, g/m2, where it is not the usual for this kind of step. */
  readonly waterGramsPerSquareMetre?: number;
  /** Which evening it belongs to, from 1; left out where all is done in one. */
  readonly evening?: number;
  /** The gravest of what will happen because of her changes, one sentence; left out where nothing speaks against it. */
  readonly consequence?: string;
  /** What else will happen because of them, less grave, a sentence each; left out: nothing. */
  readonly alsoHappens?: readonly string[];
  readonly paintMinutes: Range;
  /** From the end of painting until the shine has gone. [0, 0] where nothing wet was put down. */
  readonly shineMinutes: Range;
  /** From the end of painting until bone dry. [0, 0] likewise. */
  readonly dryMinutes: Range;
  /** All that may hurt someone at this step, a sentence each; right under the prompt. */
  readonly cautions: readonly string[];
  /** What else to know: less water, the evening it ends; a sentence each. Left out: nothing. */
  readonly notes?: readonly string[];
  /** Which of the ordering rules R1..R21 this step obeys or is there for. */
  readonly rules: readonly string[];
  /** Dry colour of every slot after this step, in the order of the plan's slots. */
  readonly after: readonly Lab[];
  /** The same as the slots run: sRGB bytes, 3 for each row of the reading's squares; missing without them. */
  readonly look?: Uint8ClampedArray;
  /** All marks that are on the sheet after this step; left out: none. */
  readonly marks?: readonly Mark[];
}

export interface PaletteEntry {
  readonly id: string;
  readonly ci: string;
  readonly name: string;
  /** What it is for, in about five words. */
  readonly why: string;
  /** Darkest it reaches alone, L*. */
  readonly darkest: number;
}

/** An immutable revision: it and its optics are frozen under a session. */
export interface WashPlan {
  readonly schema: 1;
  readonly id: string;
  readonly engine: string;
  readonly basedOn?: string;
  readonly paper: Lab;
  readonly range: ToneRange;
  /** The reading's slots with targets for this palette; `Step.after` and the slot map follow their order. */
  readonly slots: readonly Slot[];
  readonly palette: readonly PaletteEntry[];
  readonly optics: readonly Paint[];
  /** What the dried sheet is seen through; missing in plans made with a plain floor. */
  readonly surface?: Surface;
  readonly mixes: readonly Mix[];
  readonly steps: readonly Step[];
  readonly warnings: readonly Warning[];
  /** How the mixes run over their shapes; missing where the reading does not say how its colours run. */
  readonly runs?: readonly Run[];
  /** How many washes lie over each other, and why, in a sentence; missing in older plans. */
  readonly washesWhy?: string;
  /** What was left out so that the painting steps do not become too many, a sentence; left out: nothing. */
  readonly stepsWhy?: string;
  /** In what order ground and subject are painted; left out where the sheet is painted as one anyway. */
  readonly passages?: PassagesInPlan;
  /** How it fits the time she has; left out where she is in no hurry. */
  readonly fit?: EveningFit;
  /** Steps she left out, so that they can be brought back. */
  readonly leftOut?: readonly Pick<Step, 'key' | 'title'>[];
}

export interface PassagesInPlan {
  readonly painted: PassagesChoice;
  readonly proposed: PassagesChoice;
  /** Why it is painted so, a sentence. */
  readonly why: string;
}

/** A plan made to fit the time she has. */
export interface EveningFit {
  /** Minutes she has for one evening. */
  readonly minutes: number;
  /** Work and waiting of every evening, minutes. */
  readonly evenings: readonly Range[];
  /** What was given up for it, a sentence each. */
  readonly gaveUp: readonly string[];
  /** Smaller sheets on which nothing need be given up; left out where there are none, and in older plans. */
  readonly smaller?: readonly SmallerSheet[];
  /** How a hair dryer would help, a sentence; left out where it would not, or is in use. */
  readonly dryer?: string;
  /** Where it is too long all the same; left out where it fits. */
  readonly tooLong?: TooLong;
}

/** A plan that takes longer than she has, whatever is given up. */
export interface TooLong {
  /** How long it takes even so, a sentence. */
  readonly text: string;
  readonly smaller: readonly SmallerSheet[];
}

/** A smaller sheet of the same shape. */
export interface SmallerSheet {
  /** Share of the area, 0..1. */
  readonly share: number;
  /** Likely minutes of the longest evening on it. */
  readonly minutes: number;
}

/** Warnings about what the plan can't reach. */
const reachCodes: readonly WarningCode[] = [
  'nothing-to-paint',
  'dark-out-of-reach',
  'colour-out-of-reach',
  'shape-out-of-reach',
  'too-many-layers',
  'wash-too-large',
  'whites-too-small',
];

/** The surface a plan was reckoned with. */
export const surfaceOf = ({ surface }: Pick<WashPlan, 'surface'>): Surface => surface ?? plainFloor;

/** How the mixes of a plan are counted: plans made with a plain floor knew no strength of paints. */
export const unitOf = ({ surface }: Pick<WashPlan, 'surface'>): { readonly unit?: AmountUnit } =>
  surface ? { unit: 'ml' } : {};

/** Whether a step leaves the sheet wet. A drying check only waits for the wash before it. */
export const leavesWet = ({ kind, dryMinutes }: Pick<Step, 'kind' | 'dryMinutes'>): boolean =>
  kind !== 'dry' && dryMinutes[1] > 0;

/**
 * Small touches, each set elsewhere than the ones before it: darks beside darks, whites in the lights. They dry while
 * she steps back for the last look.
 */
const touches: readonly StepKind[] = ['details', 'accents', 'last-lights', 'last-look'];

/** Nobody waits between small touches, in their order, nor after them. */
export const liesElsewhere = (
  wet: Pick<Step, 'kind'> | undefined,
  { kind }: Pick<Step, 'kind'>,
): boolean => {
  const before = wet ? touches.indexOf(wet.kind) : -1;
  return before >= 0 && touches.indexOf(kind) > before;
};

export const isOfReach = ({ code }: Pick<Warning, 'code'>): boolean => reachCodes.includes(code);

/** The washes that lie dry under a mix when it is laid, first one first. */
export const mixesBelow = ({ mixes }: Pick<WashPlan, 'mixes'>, mix: Mix): LaidMix[] =>
  mixes
    .filter(
      ({ passage, family, wash, parts }) =>
        passage === mix.passage && family === mix.family && wash < mix.wash && parts.length > 0,
    )
    .sort((one, two) => one.wash - two.wash)
    .map(({ parts, load }) => ({ parts, load }));

/** The one passage a step works in; 'sheet' where it is about several or the whole of it. */
export function passageOf({ slots }: Pick<Step, 'slots'>, plan: Pick<WashPlan, 'slots'>): string {
  const passages = new Set(slots.map((slot) => plan.slots[slot]?.passage));
  const [only] = passages;
  return passages.size === 1 && only !== undefined ? only : 'sheet';
}
