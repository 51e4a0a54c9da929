import type { Alteration } from './alteration.ts';
import type { Edge } from './edge.ts';
import type { FamilyEdit } from './family-edit.ts';
import type { Lab, Point } from './lab.ts';
import type { MassCounts, MassSizes } from './masses.ts';
import type { Side } from './side.ts';
import type { SubjectFacts, SubjectStroke } from './subject.ts';
import type { White, WhiteStroke } from './whites.ts';

/** Named in every reading; raised when the same picture may be read otherwise. */
export const readingEngine = 'reading-4';

/**
 * Means of simplified lightness over a set of pixels, each pixel clamped first: to [lo, hi] and to
 * [lo, 100] of the tone range (percentiles of this picture, so they do not depend on the paints).
 */
export interface ToneMeans {
  readonly clamped: number;
  readonly floored: number;
}

/** One step of value the picture is simplified to. Band 1 is the lightest. */
export interface Band {
  readonly band: number;
  /** Lower and upper limit in L* of the simplified picture. */
  readonly from: number;
  readonly to: number;
  /** Share of the cropped area, 0..1. */
  readonly share: number;
  /** Mean simplified lightness, L*. */
  readonly lightness: number;
  /** Munsell value of that lightness, 0..10, 10 is white (ASTM D1535). */
  readonly value: number;
  /** Lightness it is to have on the sheet, L*: mean mapped lightness over all its pixels. */
  readonly plannedLightness: number;
  readonly tones: ToneMeans;
}

/** A hue group of the picture, across all bands. Ids count from 1. */
export interface Family {
  readonly id: number;
  readonly lab: Lab;
  readonly share: number;
  /** In painter's words: 'dull yellow-green'. */
  readonly name: string;
}

/** How lightness slopes over the pixels of a slot: the plane fitted to it. */
export interface SlotSlope {
  /** Difference from its lightest to its darkest end along the plane, L*, over 0. */
  readonly lightness: number;
  /** Where it is darkest. */
  readonly towards: Side;
  /** Share of the lightness's variance the plane explains, 0..1. */
  readonly fit: number;
}

/**
 * All shapes of one band and one family in one passage: what one mix of one wash covers.
 * The slot map holds, for every pixel of the raster, the index of its slot in `Reading.slots`.
 */
export interface Slot {
  readonly passage: string;
  readonly band: number;
  readonly family: number;
  /** Share of the cropped area after merging, 0..1. */
  readonly share: number;
  /** Mean simplified colour of its pixels before merging. */
  readonly lab: Lab;
  /** The colour it is to have on the sheet: mapped lightness, a* and b* unchanged. */
  readonly target: Lab;
  /** Paper kept white: target within 6 L* of the paper. */
  readonly reserve: boolean;
  /** A reserve by her brush, whatever its value in the photo. */
  readonly byHand?: boolean;
  readonly tones: ToneMeans;
  /** Number of connected shapes; how many of them have a short side under 3 mm; area of the largest, mm2. */
  readonly shapes: number;
  readonly smallShapes: number;
  readonly largestMm2: number;
  /** Mean place of its pixels, 0..1 from the left and from the top; missing in older readings. */
  readonly centre?: Point;
  /** Missing where there is none, and in older readings. */
  readonly slope?: SlotSlope;
}

export interface ReserveSummary {
  /** Share of the cropped area kept white, 0..1. */
  readonly share: number;
  readonly count: number;
  readonly smallCount: number;
}

/** Where two slots meet, summed over the picture. */
export interface Border {
  readonly a: number;
  readonly b: number;
  /** Length on the sheet, mm. */
  readonly lengthMm: number;
  /** Mean difference in unsimplified lightness across it, L*. */
  readonly contrast: number;
  /** Share of its length that is soft, and that is lost, 0..1. */
  readonly soft: number;
  readonly lost: number;
}

export type WarningCode =
  | 'few-tones'
  | 'flat'
  | 'no-darks'
  | 'one-third'
  | 'clipped-light'
  | 'clipped-dark'
  | 'merge'
  | 'too-broken'
  | 'small-picture'
  | 'nothing-to-paint'
  | 'dark-out-of-reach'
  | 'colour-out-of-reach'
  | 'shape-out-of-reach'
  | 'too-many-layers'
  | 'wash-too-large'
  | 'whites-too-small'
  | 'all-hard'
  | 'untrue-pixels'
  | 'high-key'
  | 'low-key';

/** A sentence for the painter: cause and what to do. The first in a list matters most. */
export interface Warning {
  readonly code: WarningCode;
  readonly text: string;
}

export type RangeMode = 'photographed' | 'opened';

/** How the reference's lightness is brought into what paper and paint can do. All in L*. */
export interface ToneRange {
  readonly mode: RangeMode;
  readonly lo: number;
  readonly hi: number;
  readonly dark: number;
  readonly paper: number;
  /** The darkest the paints reach, whatever the mode; readings kept from before do not have it. */
  readonly darkest?: number;
}

export interface LightnessSummary {
  /** Simplified lightness, 256 bins, bin = round(L* x 2.55), counts of pixels. */
  readonly histogram: readonly number[];
  readonly p5: number;
  readonly p50: number;
  readonly p95: number;
}

/** What is seen in a reference: small, plain data. The byte maps travel beside it. */
export interface Reading {
  readonly engine: string;
  readonly raster: { readonly width: number; readonly height: number };
  readonly sheet: { readonly widthMm: number; readonly heightMm: number };
  readonly lightness: LightnessSummary;
  readonly bands: readonly Band[];
  /** Number of bands proposed, and the sentence that says why. */
  readonly proposedBands: number;
  readonly bandsWhy: string;
  readonly families: readonly Family[];
  readonly slots: readonly Slot[];
  readonly borders: readonly Border[];
  /** Edges along the contours between slots; missing in readings made before they were measured. */
  readonly edges?: readonly Edge[];
  /** Shapes to paint in each wash; missing in older readings. */
  readonly masses?: MassCounts;
  readonly reserves: ReserveSummary;
  /** Every connected white, largest first; missing in older readings. */
  readonly whites?: readonly White[];
  readonly range: ToneRange;
  /** Share of the area in shapes too small to paint on this sheet. */
  readonly brokenShare: number;
  /** How the subject stands against its ground; null, or missing in older readings, without one. */
  readonly subject?: SubjectFacts | null;
  readonly warnings: readonly Warning[];
}

/** What she may decide about a reading; what is left out is proposed. */
export interface ReadingWishes {
  readonly bands?: number;
  /** Limits between bands in L*, from dark to light; overrides `bands`. */
  readonly limits?: readonly number[];
  readonly families?: number;
  readonly range?: RangeMode;
  /** Her strokes round the subject and over it; without any the sheet is one passage. */
  readonly subject?: readonly SubjectStroke[];
  /** Her strokes over what is to stay white, or to be painted, in order. */
  readonly whites?: readonly WhiteStroke[];
  /** Changes of the colour families, in order. */
  readonly familyEdits?: readonly FamilyEdit[];
  readonly smallest?: MassSizes;
  /** What is painted otherwise than in the photo, in order. */
  readonly alterations?: readonly Alteration[];
  /** The ground as one plain wash; means nothing without a subject. */
  readonly plainGround?: boolean;
}

/** Smallest short side of a shape she can paint, mm on the sheet, by wash (own proposal). */
export const smallestShapeMm = { first: 10, second: 5, darks: 2, details: 1 } as const;

/** Within this of the paper a shape is kept white, L*. */
export const reserveWithin = 6;
