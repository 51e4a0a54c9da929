import { noLike, noName, parseColourIndex } from '../words/paint-entry.ts';
import { sortPaints } from './list-paints.ts';
import type { Paint, PaintCard, PaintProperties } from './paint.ts';
import { careOfNames, type PigmentTraits, traitsOfNames } from './paint-traits.ts';

/** A paint of her own as she types it: kept at every change. */
export interface PaintDraft {
  readonly name: string;
  /** Colour Index names as typed. */
  readonly ci: string;
  /** The built-in paint it behaves like; null: as proposed, or as measured. */
  readonly like: string | null;
  /** The properties she says herself; the others come from memory. */
  readonly hers: Partial<PaintProperties>;
}

/** Drafts by the id of the paint that is changed; that of a new paint under `newPaint`. */
export type PaintDrafts = Readonly<Record<string, PaintDraft>>;
export const newPaint = 'new';

export const emptyDraft: PaintDraft = { name: '', ci: '', like: null, hers: {} };

const traitNames = [
  'transparency',
  'staining',
  'granulation',
  'lightfastness',
  'caution',
] as const satisfies readonly (keyof PaintProperties)[];

/** A paint as a draft again, so that it can be changed. */
export function draftOf({ name, ci, properties, fromMemory = [], optics }: Paint): PaintDraft {
  const hers = Object.fromEntries(
    traitNames.filter((each) => !fromMemory.includes(each)).map((each) => [each, properties[each]]),
  );
  return { name, ci: ci.join(', '), like: optics?.from === 'like' ? optics.id : null, hers };
}

const isBuiltIn = ({ optics }: Pick<PaintCard, 'optics'>): boolean => optics === undefined;
const sameNames = (one: readonly string[], other: readonly string[]): boolean =>
  one.length > 0 && one.length === other.length && one.every((name) => other.includes(name));

/** The words a paint is called by; 'hue' says that it is a substitute, not what it is. */
const nameWords = (name: string): string[] => name.toLowerCase().split(/[\s,]+/);
const isSubstitute = (name: string): boolean => nameWords(name).includes('hue');

/** The built-in paints of exactly these pigments; first those whose name is most like hers, substitutes last. */
export function paintsOfSamePigment<P extends Pick<PaintCard, 'name' | 'ci' | 'optics'>>(
  names: readonly string[],
  herName: string,
  paints: readonly P[],
): P[] {
  const hers = nameWords(herName);
  const alike = ({ name }: P): number =>
    nameWords(name).filter((word) => hers.includes(word)).length - Number(isSubstitute(name)) / 2;
  return paints
    .filter((paint) => isBuiltIn(paint) && sameNames(paint.ci, names))
    .sort((one, other) => alike(other) - alike(one));
}

/** The built-in paint she calls by its very name: it need not be typed at all. */
export const builtInOfName = (herName: string, cards: readonly PaintCard[]): PaintCard | null =>
  cards.find(
    (card) => isBuiltIn(card) && card.name.toLowerCase() === herName.trim().toLowerCase(),
  ) ?? null;

const kindOf = (name: string): string => name.replace(/\d.*$/, '');

/**
 * The built-in paints in the order she looks through them: of her pigments, of like letters (PB),
 * the others.
 */
export function paintsToPickFrom(
  names: readonly string[],
  herName: string,
  cards: readonly PaintCard[],
): PaintCard[] {
  const same = paintsOfSamePigment(names, herName, cards);
  const kinds = names.map(kindOf);
  const isLike = ({ ci }: PaintCard): boolean => ci.some((each) => kinds.includes(kindOf(each)));
  const others = sortPaints(
    cards.filter((card) => isBuiltIn(card) && !same.includes(card)),
    'hue',
  );
  return [...same, ...others.filter(isLike), ...others.filter((card) => !isLike(card))];
}

/** A draft with what follows from it. Problems are sentences for her, null where all is well. */
export interface SettledDraft {
  readonly name: string;
  readonly ci: readonly string[];
  readonly properties: PaintProperties;
  /** As of a card. */
  readonly care: string;
  readonly fromMemory: readonly (keyof PaintProperties)[];
  /** The built-in paint it behaves like; null where it is measured, or she has to pick one. */
  readonly like: string | null;
  readonly problems: {
    readonly name: string | null;
    readonly ci: string | null;
    readonly like: string | null;
  };
}

export interface DraftKnowledge {
  readonly cards: readonly PaintCard[];
  readonly table: readonly PigmentTraits[];
  /** The paint was measured from a photo: it needs no other to behave like. */
  readonly measured: boolean;
}

export function settleDraft(
  draft: PaintDraft,
  { cards, table, measured }: DraftKnowledge,
): SettledDraft {
  const name = draft.name.trim().replace(/\s+/g, ' ');
  const parsed = parseColourIndex(draft.ci);
  const ci = typeof parsed === 'string' ? [] : parsed;
  const proposed = measured ? undefined : paintsOfSamePigment(ci, name, cards)[0];
  const likeCard = cards.find(({ id }) => id === draft.like) ?? proposed;
  const like = likeCard?.id ?? null;
  // Of a mixed tube nobody may tell the pigments: then the names can't be asked for.
  const isUntold = draft.ci.trim() === '' && (measured || likeCard?.ci.length === 0);
  const remembered =
    likeCard && (isUntold || sameNames(likeCard.ci, ci))
      ? likeCard.properties
      : traitsOfNames(ci, table);
  const properties = { ...remembered, ...draft.hers };
  return {
    name,
    ci,
    like,
    properties,
    care: careOfNames(ci, properties.caution, table),
    fromMemory: traitNames.filter((each) => !(each in draft.hers)),
    problems: {
      name: name ? null : noName,
      ci: typeof parsed === 'string' && !isUntold ? parsed : null,
      like: like || measured ? null : noLike,
    },
  };
}
