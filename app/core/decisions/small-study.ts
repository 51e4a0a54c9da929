import { emptyBox, isOwned, type OwnBox } from '../paint/own-box.ts';
import { isWhiteOrBlack, type PaintCard } from '../paint/paint.ts';
import type { Reference } from '../reference/reference.ts';
import { orientationOf, type Sheet, turned } from '../reference/sheet.ts';
import type { Decision, NewDecision, Painting } from './painting.ts';
import { standingDecisions } from './standing-decisions.ts';

const darkestOf = ({ ladder }: PaintCard): number =>
  Math.min(...ladder.map(([lightness]) => lightness));

/** The paint of her box that gets darkest by itself, no white or black; of those most boxes hold where she owns none such. */
export function darkPaint(cards: readonly PaintCard[], box: OwnBox): PaintCard | null {
  const coloured = cards.filter(({ ci }) => !isWhiteOrBlack(ci));
  const owned = coloured.filter((card) => isOwned(box, card));
  const usual = coloured.filter((card) => isOwned(emptyBox, card));
  return (owned.length > 0 ? owned : usual).reduce<PaintCard | null>(
    (best, card) => (best && darkestOf(best) <= darkestOf(card) ? best : card),
    null,
  );
}

/** A postcard. */
const postcard: Sheet = { format: 'own', widthMm: 148, heightMm: 105 };

/**
 * Three values in two washes, about twenty minutes' work (common practice, no source), and with the drying an hour.
 */
const bands = 3;
const washes = 2;
const minutes = 60;

/** The part of a reference's crop that has the card's shape, as large as it can be, about its centre. */
function cutToCard({ crop, sheet }: Reference, card: Sheet): Reference['crop'] {
  // The crop has the shape of its sheet.
  const wider = card.widthMm / card.heightMm / (sheet.widthMm / sheet.heightMm);
  const [width, height] = crop.size;
  return { ...crop, size: wider > 1 ? [width, height / wider] : [width * wider, height] };
}

/** On dry paper a card dries soon, and need not be stretched. */
const onDryPaper: NewDecision[] = [1, 2].map((wash) => ({
  kind: 'plan-edit',
  edit: { kind: 'technique', key: `wash/sheet/${wash}`, technique: 'wet on dry' },
}));

/** What makes it a study: few values, one colour in one paint, few washes, little time. */
const studyDecisions = (paint: string): NewDecision[] => [
  { kind: 'bands', count: bands },
  { kind: 'families', edit: { join: 'all' } },
  { kind: 'colours', wish: { mode: 'one', paint } },
  { kind: 'washes', count: washes },
  { kind: 'evening', minutes },
  ...onDryPaper,
];

interface NewStudy {
  readonly painting: Painting;
  /** What it is called. */
  readonly title: string;
  /** Id of a dark paint. */
  readonly paint: string;
  /** Wall time, ms since 1970. */
  readonly createdAt: number;
  readonly newId: () => string;
}

/**
 * A small study of a painting, as a painting of its own: the same photo on a postcard turned as its sheet, the
 * same crop cut to its shape; what is painted otherwise and what stays white goes with it.
 */
export function smallStudy({ painting, title, paint, createdAt, newId }: NewStudy): Painting {
  const card = turned(postcard, orientationOf(painting.reference.sheet));
  const taken = standingDecisions(painting.decisions, 'alter', 'white');
  const own = studyDecisions(paint).map(
    (each): Decision => ({ ...each, id: newId(), at: createdAt }),
  );
  return {
    schema: 1,
    id: newId(),
    title,
    createdAt,
    updatedAt: createdAt,
    reference: {
      photoId: painting.reference.photoId,
      crop: cutToCard(painting.reference, card),
      sheet: card,
    },
    decisions: [...taken.map((each) => ({ ...each, id: newId() })), ...own],
    planIds: [],
    sessionIds: [],
    studyOf: painting.id,
  };
}
