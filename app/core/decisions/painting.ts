import type { Point } from '../colour/lab.ts';
import type { EdgeWish } from '../reading/edges/edge.ts';
import type { FamilyEdit } from '../reading/families/family-edit.ts';
import type { MassSizes } from '../reading/masses.ts';
import type { RangeMode } from '../reading/reading.ts';
import type { SubjectMode } from '../reading/subject/subject.ts';
import type { WhiteMode, WhiteWay } from '../reading/whites/whites.ts';
import type { Change, PhotoStroke } from '../reference/photo-stroke.ts';
import type { Reference } from '../reference/reference.ts';
import type { PassagesChoice, PlanEdit } from './plan-edit.ts';
import type { ColourWish } from './plan-wishes.ts';

/** A photo as it came in, never re-encoded, never changed. */
export interface Photo {
  readonly id: string;
  readonly bytes: ArrayBuffer;
  readonly mime: string;
  /** Hex digest of the bytes. */
  readonly sha256: string;
  /** The file's own name, for her to recognise it; may be empty. */
  readonly name: string;
}

/**
 * Something she decided. Only ever appended; the last of a kind counts. Taking one back is a record
 * too: it names in `undoes` the decision that no longer counts.
 */
export type Decision = {
  readonly id: string;
  /** Wall time, ms since 1970. */
  readonly at: number;
  readonly undoes?: string;
} & (
  | { readonly kind: 'bands'; readonly count: number }
  /** Limits between bands, L*, from dark to light; the later of this and 'bands' counts. */
  | { readonly kind: 'limits'; readonly lightness: readonly number[] }
  | { readonly kind: 'range'; readonly mode: RangeMode }
  | {
      readonly kind: 'palette';
      readonly n: number;
      readonly must: readonly string[];
      readonly exclude: readonly string[];
      /** Exactly these: no search. */
      readonly chosen?: readonly string[];
    }
  | ({ readonly kind: 'subject'; readonly mode: SubjectMode } & PhotoStroke)
  /** Brushed over what is to stay white, or over a white that is to be painted. */
  | ({ readonly kind: 'white'; readonly mode: WhiteMode } & PhotoStroke)
  /** How the white at a place of the photo is kept, or all small ones without a place; null: as proposed. */
  | { readonly kind: 'white-way'; readonly place: Point | null; readonly way: WhiteWay | null }
  /**
   * What becomes of the edge at a place of the photo; null: as measured. `whole`: of all that is one edge to the eye
   * there; without it of the one stretch, as in paintings from before.
   */
  | {
      readonly kind: 'edge';
      readonly place: Point;
      readonly wish: EdgeWish | null;
      readonly whole?: true;
    }
  /** Where the eye should rest, a place of the photo; null: nowhere in particular. */
  | { readonly kind: 'focus'; readonly place: Point | null }
  | { readonly kind: 'colours'; readonly wish: ColourWish }
  /** Two colour families made one, or one made two; null: as the picture has them. */
  | { readonly kind: 'families'; readonly edit: FamilyEdit | null }
  /** Smallest shapes of each wash; null: the usual ones. */
  | { readonly kind: 'smallest'; readonly sizes: MassSizes | null }
  /** An area of the photo painted otherwise than it is. */
  | ({ readonly kind: 'alter'; readonly change: Change } & PhotoStroke)
  /** The ground of the subject as one plain wash. */
  | { readonly kind: 'ground'; readonly plain: boolean }
  /** Minutes she has in one evening; null: no hurry. */
  | { readonly kind: 'evening'; readonly minutes: number | null }
  /** Washes over each other at most; null: as proposed. */
  | { readonly kind: 'washes'; readonly count: number | null }
  /** Order of ground and subject; null: as proposed. */
  | { readonly kind: 'passages'; readonly order: PassagesChoice | null }
  /** A change of the steps; null: all changes so far are dropped. */
  | { readonly kind: 'plan-edit'; readonly edit: PlanEdit | null }
  /** Nothing new, only the taking back. */
  | { readonly kind: 'undo' }
);

type Unsigned<D> = D extends unknown ? Omit<D, 'id' | 'at'> : never;

/** A decision as a screen hands it over, before it is given its id and time. */
export type NewDecision = Unsigned<Decision>;

export type Purpose = 'study' | 'candidate';

/** One project: a reference, what she decided about it, its plans and its sessions at the easel. */
export interface Painting {
  readonly schema: 1;
  readonly id: string;
  readonly title: string;
  /** Wall time, ms since 1970. */
  readonly createdAt: number;
  readonly updatedAt: number;
  readonly reference: Reference;
  readonly decisions: readonly Decision[];
  /** Oldest first: the last is the one to paint by. */
  readonly planIds: readonly string[];
  readonly sessionIds: readonly string[];
  /**
   * Left out: to be painted. 'study': only looked at, no plan is made. 'candidate': one of several
   * photos she is choosing among.
   */
  readonly purpose?: Purpose;
  /** Left out: a painting in its own right. Else the id of the painting it is a small study of. */
  readonly studyOf?: string;
  /**
   * It came by itself in a copy, as a teacher hands it on: with that plan, and so many decisions. Left out: it did not.
   */
  readonly handedOn?: { readonly planId: string; readonly decisions: number };
  /** Put away, but can still be brought back. */
  readonly deletedAt?: number;
}
