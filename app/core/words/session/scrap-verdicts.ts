import type { LaidMix } from '../../paint/mix.ts';
import type { ScrapVerdict } from '../../paint/paint-at-fault.ts';
import { type ComparedPuddle, isSamePuddle } from '../../session/scrap-verdicts.ts';

const depthWords = { weaker: 'too pale', right: 'right', stronger: 'too strong' } as const;

/** 'too pale and too blue'. */
const verdictInWords = ({ depth, hue }: ScrapVerdict): string =>
  [depth && depthWords[depth], hue && `too ${hue}`].filter(Boolean).join(' and ');

/** What the same puddle did last time, when first mixed by the plan; null where it is new, or was right. */
export function lastTimeWords(lessons: readonly ComparedPuddle[], puddle: LaidMix): string | null {
  const first = lessons.find((each) => isSamePuddle(each, puddle))?.tries[0];
  if (!first || first.depth === 'right') return null;
  const advice = { weaker: ': take more paint', stronger: ': take more water' };
  return `Last time it came out ${verdictInWords(first)}${first.depth ? advice[first.depth] : ''}.`;
}

/** How a puddle came out on the scrap, to follow its words: '; on the scrap too pale, then right'; '' where it was not compared. */
export function scrapInWords(compared: readonly ComparedPuddle[], puddle: LaidMix): string {
  const tries = compared.find((each) => isSamePuddle(each, puddle))?.tries ?? [];
  return tries.length > 0 ? `; on the scrap ${tries.map(verdictInWords).join(', then ')}` : '';
}
