import type { EdgeProposal, EdgeProposals } from '../../decisions/edge-proposals.ts';
import { lengthInWords, openWithCount, pluralize, valuesApart, widthInWords } from '../numbers.ts';

/** What is to be done before edges can be proposed. */
export const firstWords: Readonly<Record<NonNullable<EdgeProposals['first']>, string>> = {
  'all-hard':
    'Nearly every edge is hard. Touch your centre of interest, and edges to soften are suggested.',
  usual: 'Touch your centre of interest, and edges to soften are suggested.',
};

/** Why an edge is to become otherwise, with the figures that led to it: one sentence. */
export function edgeWhyInWords({ wish, why }: Pick<EdgeProposal, 'wish' | 'why'>): string {
  const long = `${lengthInWords(why.lengthMm)} long`;
  const apart = `${valuesApart(why.contrast)} of difference`;
  if (wish === 'sharpen')
    return `At your centre of interest, ${long}, ${apart}, but spread over ${widthInWords(why.widthMm)}.`;
  const from = `${lengthInWords(why.awayMm)} from your centre of interest, ${long}`;
  return wish === 'lose'
    ? `${from}, at most ${apart}: it can disappear.`
    : `${from}, hard, ${apart}: it draws the eye away.`;
}

/** Of edges that may be soft by the lens only. */
export function lensInWords(count: number): string {
  const which = `${openWithCount(count, 'edge')} at your centre of interest ${pluralize(count, 'is', 'are')}`;
  const them = pluralize(count, 'it', 'them');
  return `${which} out of focus: the lens may have made ${them} soft. Look at the subject before you decide.`;
}
