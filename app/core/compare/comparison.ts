import type { Lab, Point } from '../colour/lab.ts';
import type { Consistency } from '../paint/consistency.ts';
import type { Part } from '../paint/mix.ts';
import type { Step, StepKind } from '../plan/plan.ts';
import type { EdgeKind } from '../reading/edges/edge.ts';
import type { SheetPlace } from './find-sheet.ts';
import type { ShapeDifference } from './shape-differences.ts';

/** Named in every comparison; raised when the same photo may be judged otherwise. */
export const compareEngine = 'compare-3';

/** Under `slight` a lightness is the same as planned, up to `clear` slightly off, beyond it clearly; L* (own). */
export const lightnessLimits = { slight: 4, clear: 8 } as const;

export type LightnessVerdict =
  | 'same'
  | 'slightly lighter'
  | 'clearly lighter'
  | 'slightly darker'
  | 'clearly darker';

/** How a colour has drifted; warmer is towards orange. */
export type Drift = 'warmer' | 'cooler' | 'duller' | 'cleaner';

/** How the sheet is when it is photographed; she is asked. */
export const sheetWetnesses = ['shiny', 'satin', 'dry'] as const;
export type SheetWetness = (typeof sheetWetnesses)[number];

/** Why nothing is judged. */
export type Refusal = 'shiny' | 'nothing-painted' | 'no-sheet' | 'not-sure' | 'no-light';

/** What to do better at the next photo; the first matters most. */
export type PhotoTip =
  | 'no-bare-paper'
  | 'clipped'
  | 'glare'
  | 'shadow'
  | 'uneven'
  | 'coloured-light'
  | 'off-the-photo'
  | 'coarse';

export interface ShapeVerdict extends ShapeDifference {
  readonly band: number;
  readonly family: number;
  readonly passage: string;
  /** Measured less expected, L*. */
  readonly difference: number;
  readonly verdict: LightnessVerdict;
  readonly drift: readonly Drift[];
}

export interface BandVerdict {
  readonly band: number;
  readonly share: number;
  readonly expected: number;
  readonly measured: number;
  readonly difference: number;
  readonly verdict: LightnessVerdict;
}

export interface WhiteVerdict {
  readonly slot: number;
  readonly at: Point;
  readonly areaMm2: number;
  readonly kept: boolean;
  readonly measured: Lab;
}

export interface EdgeVerdict {
  /** Index into the reading's edges. */
  readonly edge: number;
  readonly at: Point;
  readonly lengthMm: number;
  /** What it was decided to be, and how it came out. */
  readonly decided: EdgeKind;
  readonly came: 'harder' | 'softer';
  /** Widths on the sheet, mm, as drawn and as painted. */
  readonly expectedMm: number;
  readonly measuredMm: number;
  readonly contrast: number;
}

/** What mends it: now by paint or water, or when the next wash comes. */
export const mendings = [
  ...(['glaze', 'lay-missing', 'stronger-next', 'weaker-next', 'lift', 'opaque-white'] as const),
  ...(['soften-edge', 'sharpen-edge', 'leave-as-is'] as const),
] as const;
export type Mending = (typeof mendings)[number];

/** One thing worth doing. */
export interface Advice {
  readonly mending: Mending;
  /** Rank by area x difference x nearness; for comparison only. */
  readonly weight: number;
  readonly slot: number;
  /** Shapes it is about; none for an edge. */
  readonly shapes: readonly number[];
  readonly edge?: number;
  readonly at: Point;
  readonly share: number;
  /** Measured less expected, L*. */
  readonly difference: number;
  readonly drift: readonly Drift[];
  readonly measured: Lab;
  readonly expected: Lab;
  /** What it would look like then, dry. */
  readonly predicted: Lab;
  readonly parts?: readonly Part[];
  readonly load?: number;
  readonly consistency?: Consistency;
  /** The plan's step it waits for. */
  readonly step?: number;
}

/** How the light of the photo was, and what of the sheet was left out; shares 0..1. */
export interface LightFacts {
  /** Share of the sheet that is bare paper and was taken for white; and of the verge round it. */
  readonly paperShare: number;
  readonly vergeShare: number;
  /** Light of the darkest place of the sheet as a share of the brightest. */
  readonly evenness: number;
  /** Strength of the camera's tone curve, and how far middle tones may be off because of it, L*. */
  readonly curve: number;
  readonly doubt: number;
  readonly missing: number;
  readonly clipped: number;
  readonly glare: number;
  readonly shadow: number;
}

/** The whole sheet, as seen from across the room. */
export interface WholeVerdict {
  /** Share of the measured area within 4 and within 8 L* of what was planned. */
  readonly within4: number;
  readonly within8: number;
  /** Correlation of the squinted sheet with the photo in grey, as the sheet is to have it; null where it is not given. */
  readonly likeReference: number | null;
  /** The same of the expected sheet: what can be had at this stage. */
  readonly expectedLikeReference: number | null;
  /** Lightest and darkest twentieth, L*, as expected and as measured. */
  readonly expectedRange: readonly [number, number];
  readonly measuredRange: readonly [number, number];
}

/** Nothing is judged: why, and how far it came. */
export interface RefusedComparison {
  readonly engine: string;
  readonly step: number;
  readonly refused: Refusal;
  readonly place: SheetPlace | null;
}

/** A sheet beside what was planned of it. */
export interface JudgedComparison {
  readonly engine: string;
  readonly step: number;
  readonly refused: null;
  readonly place: SheetPlace;
  readonly light: LightFacts;
  readonly tips: readonly PhotoTip[];
  readonly shapes: readonly ShapeVerdict[];
  readonly bands: readonly BandVerdict[];
  readonly whites: readonly WhiteVerdict[];
  readonly edges: readonly EdgeVerdict[];
  readonly whole: WholeVerdict;
  /** At most three, what matters most first; none: leave it. */
  readonly advice: readonly Advice[];
}

export type Comparison = RefusedComparison | JudgedComparison;

export function lightnessVerdict(difference: number): LightnessVerdict {
  const size = Math.abs(difference);
  if (size < lightnessLimits.slight) return 'same';
  const way = difference > 0 ? 'lighter' : 'darker';
  return size < lightnessLimits.clear ? `slightly ${way}` : `clearly ${way}`;
}

/** Whether a step has left anything on the sheet to compare. */
export const isPainted = ({ after }: Pick<Step, 'after'>, paper: Lab): boolean =>
  after.some((lab) => Math.hypot(lab[0] - paper[0], lab[1] - paper[1], lab[2] - paper[2]) > 3);

/** After these the sheet looks otherwise than before. */
const changing: readonly StepKind[] = [
  ...(['wash', 'unmask', 'lift', 'splatter', 'details', 'accents', 'last-lights'] as const),
];

/** The steps after which her sheet can be compared. */
export const comparedSteps = ({
  steps,
  paper,
}: {
  readonly steps: readonly Step[];
  readonly paper: Lab;
}): Step[] => steps.filter((step) => changing.includes(step.kind) && isPainted(step, paper));

/** Smaller whites are not counted one by one, mm2. */
const leastWhiteMm2 = 25;

/** Whether a white is lost that is worth counting. */
export const isLost = ({ kept, areaMm2 }: WhiteVerdict): boolean =>
  !kept && areaMm2 >= leastWhiteMm2;

/** How many whites are lost that are worth counting. */
export const whitesLostIn = (whites: readonly WhiteVerdict[]): number =>
  whites.filter(isLost).length;
