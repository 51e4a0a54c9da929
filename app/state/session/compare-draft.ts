import type { Point } from '../../core/colour/lab.ts';
import { type SheetWetness, sheetWetnesses } from '../../core/compare/comparison.ts';
import { type Corners, isConvex } from '../../core/compare/homography.ts';
import type { ComparedNote } from '../../core/session/compared-sheets.ts';
import { comparingName } from '../../storage/sessions.ts';
import type { Keepsakes } from './keepsakes.ts';

/** What she has told of a photo of her sheet; kept, so that it is all there after a reload. */
export interface CompareDraft {
  /** Null before there is a photo. */
  readonly photoId: string | null;
  /** Key of the step after which it was taken; null: the one done last. */
  readonly key: string | null;
  readonly wetness: SheetWetness | null;
  /** Set by her, shares of the photo's sides; null: they are sought. */
  readonly corners: Corners | null;
  /** Bare paper that she touched, likewise. */
  readonly bare: readonly Point[];
}

export const noDraft: CompareDraft = {
  photoId: null,
  key: null,
  wetness: null,
  corners: null,
  bare: [],
};

const isPoint = (value: unknown): value is Point =>
  Array.isArray(value) && value.length === 2 && value.every(Number.isFinite);
const isCorners = (value: unknown): value is Corners =>
  Array.isArray(value) && value.length === 4 && value.every(isPoint);

/** A draft as it counts: of another version, or spoilt, it is none. */
export function draftOf(kept: unknown): CompareDraft {
  if (typeof kept !== 'object' || kept === null) return noDraft;
  const { photoId, key, wetness, corners, bare } = kept as Record<string, unknown>;
  return {
    photoId: typeof photoId === 'string' ? photoId : null,
    key: typeof key === 'string' ? key : null,
    wetness: sheetWetnesses.find((each) => each === wetness) ?? null,
    corners: isCorners(corners) && isConvex(corners) ? corners : null,
    bare: Array.isArray(bare) ? bare.filter(isPoint) : [],
  };
}

/** As she told it of a photo that stands in the record. */
export const draftFrom = ({
  photoId,
  key,
  wetness,
  corners,
  bare,
}: ComparedNote): CompareDraft => ({ photoId, key, wetness, corners, bare });

/** The next time her sheet is compared it begins with that photo. */
export const lookAgainAt = (
  keepsakes: Pick<Keepsakes, 'keepSetting'>,
  sessionId: string,
  note: ComparedNote,
): Promise<void> => keepsakes.keepSetting(comparingName(sessionId), draftFrom(note));
