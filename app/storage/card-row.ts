import type { Painting, Purpose } from '../core/decisions/painting.ts';
import type { Sheet } from '../core/reference/sheet.ts';
import type { Stand } from '../core/session/session-stand.ts';

/** All that the first screen shows of a painting but its picture: small, whatever is kept of the painting. */
export interface CardRow {
  readonly id: string;
  readonly title: string;
  readonly updatedAt: number;
  readonly deletedAt?: number;
  readonly purpose?: Purpose;
  readonly studyOf?: string;
  /** Null where the painting can't be read. */
  readonly sheet: Sheet | null;
  readonly planned: boolean;
  /** Its last session, and where that stands. */
  readonly sessionId: string | null;
  readonly stand: Stand | null;
  /** When its picture was kept; null before it was looked at. */
  readonly pictureAt: number | null;
  /** What is kept of the painting can't be read. */
  readonly damaged?: true;
}

const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const isPair = (value: unknown): boolean =>
  Array.isArray(value) && value.length === 2 && value.every((each) => Number.isFinite(each));

const isTexts = (value: unknown): boolean =>
  Array.isArray(value) && value.every((each) => typeof each === 'string');

const isSheet = (value: unknown): boolean =>
  isFields(value) && Number.isFinite(value.widthMm) && Number.isFinite(value.heightMm);

/** Whether a row has what every screen takes for granted. */
export function isWhole(row: unknown): row is Painting {
  if (!isFields(row) || !isFields(row.reference)) return false;
  const { photoId, crop, sheet } = row.reference;
  return (
    typeof row.title === 'string' &&
    Number.isFinite(row.updatedAt) &&
    Array.isArray(row.decisions) &&
    row.decisions.every(isFields) &&
    isTexts(row.planIds) &&
    isTexts(row.sessionIds) &&
    typeof photoId === 'string' &&
    isFields(crop) &&
    isPair(crop.centre) &&
    isPair(crop.size) &&
    Number.isFinite(crop.turn) &&
    isSheet(sheet)
  );
}

/** A card as it is shown: one that can't be read is marked as damaged. */
export function readCard(row: CardRow): CardRow {
  const whole =
    typeof row.title === 'string' &&
    Number.isFinite(row.updatedAt) &&
    (row.stand === null || isFields(row.stand)) &&
    (row.sheet === null || isSheet(row.sheet));
  return whole ? row : damagedCard(row);
}

/** The card of a painting whose row can't be read: what is left of its name, so that it can be put away. */
export function damagedCard(row: {
  readonly id: string;
  readonly title?: unknown;
  readonly updatedAt?: unknown;
  readonly deletedAt?: unknown;
}): CardRow {
  const { id, title, updatedAt, deletedAt } = row;
  return {
    id,
    title: typeof title === 'string' ? title : 'A painting',
    updatedAt: typeof updatedAt === 'number' && Number.isFinite(updatedAt) ? updatedAt : 0,
    ...(typeof deletedAt === 'number' && { deletedAt }),
    sheet: null,
    planned: false,
    sessionId: null,
    stand: null,
    pictureAt: null,
    damaged: true,
  };
}

/** The card of a painting; what the painting does not say of it is taken from the card before. */
export function cardOf(painting: Painting, before: CardRow | undefined): CardRow {
  const { id, title, updatedAt, deletedAt, purpose, studyOf, reference } = painting;
  const sessionId = painting.sessionIds.at(-1) ?? null;
  return {
    id,
    title,
    updatedAt,
    ...(deletedAt !== undefined && { deletedAt }),
    ...(purpose && { purpose }),
    ...(studyOf !== undefined && { studyOf }),
    sheet: reference.sheet,
    planned: painting.planIds.length > 0,
    sessionId,
    stand: before?.sessionId === sessionId ? before.stand : null,
    pictureAt: before?.pictureAt ?? null,
  };
}
