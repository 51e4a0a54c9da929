import type { Lab } from '../../colour/lab.ts';
import { type PaintUse, paintUses, valueSpan } from '../../paint/list-paints.ts';
import type { PaintCard, Provenance } from '../../paint/paint.ts';
import { joinWords } from '../numbers.ts';

const sources: Record<Provenance, string> = {
  'measured watercolour': 'Measured from watercolour',
  'rescaled from acrylic': 'Taken from acrylic paint of the same pigment',
  'estimated from published colour': 'Estimated from published colours',
  recipe: 'Worked out from its parts',
};

/** Up to these a tube is as good as the one of the table, or near it; CIEDE2000 of a middling wash (own). */
const closeTo = 5;
const somewhatOff = 8;

function tubeInWords(confidence: number): string {
  if (confidence <= closeTo) return 'your tube is likely close';
  if (confidence <= somewhatOff) return 'your tube may differ somewhat';
  return 'your tube may differ a good deal: try it on a scrap';
}

/**
 * Where the colour of a built-in paint comes from and how far a tube may differ from it: 'Estimated from published
 * colours; your tube may differ somewhat.' The measured tubes were told by paint names only: their Colour Index names are judged. Null for a
 * paint of her own.
 */
export function sourceInWords({
  provenance,
  confidence,
  ci = [],
}: Pick<PaintCard, 'provenance' | 'confidence'> & Partial<Pick<PaintCard, 'ci'>>): string | null {
  if (!provenance || confidence === undefined) return null;
  const isJudged = provenance === 'measured watercolour' && ci.length > 0;
  const judged = isJudged ? ', though its pigment was told by name only' : '';
  return `${sources[provenance]}${judged}; ${tubeInWords(confidence)}.`;
}

/**
 * What the colours of the built-in paints were measured on, in one sentence, of their cards: 'Of the built-in paints
 * 13 were measured as watercolour, ...'.
 */
export function measuredOnInWords(cards: readonly Pick<PaintCard, 'provenance'>[]): string {
  const count = (provenance: Provenance): number =>
    cards.filter((card) => card.provenance === provenance).length;
  return `Of the built-in paints ${count('measured watercolour')} were measured as watercolour; ${count('rescaled from acrylic')} are reckoned from acrylic paint of the same pigment, ${count('estimated from published colour')} estimated from published colours, ${count('recipe')} ready-mixed tubes reckoned from their parts: tubes differ, so brush a scrap or measure yours.`;
}

/** 'PG36, PY150', or that nobody tells. */
export const pigmentsInWords = ({ ci }: Pick<PaintCard, 'ci'>): string =>
  ci.length > 0 ? ci.join(', ') : 'mixed tube, pigments not told';

/** 'Made of PG7, PY150 and PBr7; makers differ.' Null for a tube of one pigment. */
export const madeOfInWords = ({ madeOf }: Pick<PaintCard, 'madeOf'>): string | null =>
  madeOf ? `Made of ${joinWords(madeOf.map(({ ci }) => ci))}; makers differ.` : null;

/** 'value 2.1 to 9.2'. */
export function valueSpanInWords(ladder: readonly Lab[]): string {
  const { darkest, lightest } = valueSpan(ladder);
  return `value ${darkest.toFixed(1)} to ${lightest.toFixed(1)}`;
}

/** 'Good for glazing and darks.', or that nobody has told. */
export function paintUsesInWords(card: Pick<PaintCard, 'properties' | 'ladder'>): string {
  const uses = paintUses(card);
  const told = [
    card.properties.transparency,
    card.properties.staining,
    card.properties.granulation,
  ];
  if (uses.length > 0) return `Good for ${joinWords(uses.map((use) => useWords[use]))}.`;
  return told.every((each) => each === null)
    ? 'What it is good for is not known: try it on a scrap.'
    : 'Good for mixing.';
}

const useWords: Record<PaintUse, string> = {
  early: 'first washes',
  glazing: 'glazing',
  darks: 'darks',
  lifting: 'lifting out',
  granulating: 'granulating washes',
  late: 'last touches',
};
