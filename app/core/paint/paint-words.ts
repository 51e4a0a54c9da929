import { joinWords } from '../words/numbers.ts';
import type { PaintCard, Provenance } from './paint.ts';

const sources: Record<Provenance, string> = {
  'measured watercolour': 'Measured watercolour',
  'rescaled from acrylic': 'From acrylic measurements',
  'estimated from published colour': 'Estimated',
  recipe: 'Reckoned from its parts',
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
 * Where the colour of a built-in paint comes from and how far a tube may differ from it: 'Estimated; your tube may
 * differ somewhat.' Null for a paint of her own.
 */
export function sourceInWords({
  provenance,
  confidence,
}: Pick<PaintCard, 'provenance' | 'confidence'>): string | null {
  if (!provenance || confidence === undefined) return null;
  return `${sources[provenance]}; ${tubeInWords(confidence)}.`;
}

/** 'PG36, PY150', or that nobody tells. */
export const pigmentsInWords = ({ ci }: Pick<PaintCard, 'ci'>): string =>
  ci.length > 0 ? ci.join(', ') : 'mixed tube, pigments not told';

/** 'Made of PG7, PY150 and PBr7; makers differ.' Null for a tube of one pigment. */
export const madeOfInWords = ({ madeOf }: Pick<PaintCard, 'madeOf'>): string | null =>
  madeOf ? `Made of ${joinWords(madeOf.map(({ ci }) => ci))}; makers differ.` : null;
