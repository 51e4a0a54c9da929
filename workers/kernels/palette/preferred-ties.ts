import type { FoundSet } from './best-sets.ts';
import { type PaletteSearch, paintsOf } from './open-search.ts';
import { againstPaints } from './preference.ts';

/** Sets as good as the best, as the trade would choose among them: least against their paints first, then the cheaper. */
export function preferredTies(search: PaletteSearch): FoundSet[] {
  return search.ties
    .map((set) => ({ set, against: againstPaints(paintsOf(search, set)) }))
    .sort((one, two) => one.against - two.against)
    .map(({ set }) => set);
}
