import { lightnessVerdict } from '../../compare/comparison.ts';
import type { SheetMeasures } from '../../session/session-event.ts';
import { joinWords, pluralize, spellCount } from '../numbers.ts';
import { bandWord, formatPercent } from '../reading-words.ts';

/** 'Good: left as it was. 97 % of the sheet had its planned value.' or what was off. */
export function measuresInWords(
  { within4, whitesLost, bands, advice }: SheetMeasures,
  bandCount: number,
): string {
  const share = `${formatPercent(within4)} of the sheet had its planned value`;
  const off = bands.flatMap(({ band, difference }) => {
    const verdict = lightnessVerdict(difference);
    return verdict === 'same' ? [] : [`the ${bandWord(band, bandCount)} values ${verdict}`];
  });
  const lost =
    whitesLost > 0 ? [`${spellCount(whitesLost)} ${pluralize(whitesLost, 'white')} lost`] : [];
  const rest = [...off, ...lost];
  if (rest.length > 0) return `${share}; ${joinWords(rest)}.`;
  return advice.length === 0 ? `Good: left as it was. ${share}.` : `${share}.`;
}
