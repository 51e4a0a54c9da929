import { type ComparedPuddle, isSamePuddle, type ScrapPuddle } from './scrap-verdicts.ts';

/** How a puddle came out on the scrap, to follow its words: '; on the scrap weaker, then right'; '' where it was not compared. */
export function scrapInWords(compared: readonly ComparedPuddle[], puddle: ScrapPuddle): string {
  const tries = compared.find((each) => isSamePuddle(each, puddle))?.tries ?? [];
  return tries.length > 0 ? `; on the scrap ${tries.join(', then ')}` : '';
}
