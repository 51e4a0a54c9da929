import type { Lab } from '../colour/lab.ts';
import type { Alteration } from '../reference/photo-stroke.ts';
import type { ColourSquares } from './colour-squares.ts';
import type { Details } from './details/detail.ts';
import type { Edge } from './edges/edge.ts';
import type { FamilyEdit } from './families/family-edit.ts';
import type { MassCounts, MassSizes } from './masses.ts';
import type { ReserveSummary, Slot } from './slot.ts';
import type { SubjectFacts, SubjectStroke } from './subject/subject.ts';
import type { White, WhiteStroke } from './whites/whites.ts';

/** Named in every reading; raised when the same picture may be read otherwise. */
export const readingEngine = 'reading-10';

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
  /** Lightness it is to have on the sheet, L*. */
  readonly plannedLightness: number;
}

/** A hue group of the picture, across all bands. Ids count from 1. */
export interface Family {
  readonly id: number;
  readonly lab: Lab;
  readonly share: number;
  /** In painter's words: 'dull yellow-green'. */
  readonly name: string;
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

/** Warnings of a reading that need no figure. */
type PlainWarning =
  | ('nothing-to-paint' | 'too-broken' | 'all-hard' | 'untrue-pixels' | 'part-missing')
  | ('flat' | 'high-key' | 'low-key' | 'no-darks' | 'merge');

/** What is worth knowing before painting: a code, and the figures of its sentence. The first in a list matters most. */
export type ReadingWarning =
  | { readonly code: PlainWarning }
  /** The most values the picture holds. */
  | { readonly code: 'few-tones'; readonly values: number }
  /** Share of the photo, 0..1. */
  | { readonly code: 'clipped-light' | 'clipped-dark'; readonly share: number }
  | {
      readonly code: 'one-third';
      readonly share: number;
      readonly third: 'darks' | 'mids' | 'lights';
    }
  /** With the share of the photo that is on her sheet, where that is why. */
  | { readonly code: 'small-picture'; readonly share?: number };

/** The same as readings kept from before they said codes have it: ready English. */
export interface WrittenWarning {
  readonly code: ReadingWarning['code'];
  readonly text: string;
}

/** Why so many bands are proposed. */
export type BandsWhy =
  | { readonly why: 'few-tones'; readonly tones: number }
  | { readonly why: 'whites-merge' | 'three-enough' | 'widely-spread' | 'one-colour' | 'clear' };

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
  /** Above it lightness is kept, under it pressed together; missing where all of it was brought onto one line. */
  readonly knee?: number;
}

interface LightnessSummary {
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
  /**
   * The subject's own steps of value, numbered by the picture's bands they take the place of; missing without a subject,
   * where she set the limits, and in older readings.
   */
  readonly subjectBands?: readonly Band[];
  /** Number of bands proposed, and why; a sentence in readings from before they said codes. */
  readonly proposedBands: number;
  readonly bandsWhy: BandsWhy | string;
  readonly families: readonly Family[];
  readonly slots: readonly Slot[];
  /** How the colours of the slots run over the sheet; missing in older readings. */
  readonly squares?: ColourSquares;
  /** Small shapes that washes can not hold; missing in older readings. */
  readonly details?: Details;
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
  /**
   * A loose circle round what stands out, over the cut-out; nothing follows it until she takes it. Null where nothing
   * stands out or there is a subject; missing in older readings.
   */
  readonly proposedSubject?: SubjectStroke | null;
  readonly warnings: readonly (ReadingWarning | WrittenWarning)[];
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

/** What the long job from photo to plan is busy with; the screens put it into words. */
export type ProgressPhase =
  | 'opening'
  | 'looking'
  | 'values'
  | 'colours'
  | 'shapes'
  | 'paints'
  | 'washes';

/** The bands as they are within a passage of the plan: the subject may have steps of its own. */
export const bandsWithin = (
  { bands, subjectBands = [] }: Pick<Reading, 'bands' | 'subjectBands'>,
  passage: string | null,
): readonly Band[] =>
  passage === 'subject'
    ? bands.map((band) => subjectBands.find((own) => own.band === band.band) ?? band)
    : bands;
