import type { Wetness } from '../../drying/wetness.ts';
import { type RemedyState, remedyStateOf, type Trouble } from '../../session/trouble.ts';

export const troubleWords: Record<Trouble, string> = {
  backrun: 'A bloom ran back',
  'hard edge': 'A hard edge dried in',
  'lost white': 'A white is gone',
  'too pale': 'Too pale',
  'too dark': 'Too dark',
  muddy: 'It turns to mud',
  'mask tore': 'The mask tore the paper',
  'drying too fast': 'It dries too fast',
};

const leaveIt = 'Leave it until it is bone dry';

/**
 * One remedy a trouble and state of the sheet. Sources: that nothing is done once the shine has gone: rule R7
 * (`plan/rules/rules.md`); that backruns are left, or glazed or lifted when dry: Riley, D., on backruns, 2016; masks
 * off bone-dry paper only: Spetz, G., frequently asked questions on masking (no year); all the rest is common
 * practice, no source.
 */
export const remedies: Record<Trouble, Record<RemedyState, string>> = {
  backrun: {
    wet: 'Tilt the sheet and let the puddle run off, or take it up with the tip of a thirsty brush. Add no water.',
    satin:
      'Do not touch the bloom. Take up the puddle that feeds it with a thirsty brush, then leave it.',
    cool: `${leaveIt}: every touch now makes another. A bloom is often best kept.`,
    dry: 'Keep it if it does no harm. Else wet its dark rim with a soft brush, wait, blot; or glaze over it in one pass.',
  },
  'hard edge': {
    wet: 'Soften it now: a clean, barely damp brush just outside, touching the edge once.',
    satin:
      'One touch with a nearly dry, clean brush just outside the edge, no more. If it does not give, leave it.',
    cool: `${leaveIt}: water now runs back into the wash.`,
    dry: 'Wet only the edge with a clean brush, count to ten, blot without scrubbing. Staining paint will stay.',
  },
  'lost white': {
    wet: 'Blot it out at once with a clean tissue or a thirsty brush, twice if need be.',
    satin: 'Lift with a clean thirsty brush, one stroke, and wipe it each time. Add no water.',
    cool: 'One stroke with a thirsty brush lightens it a little; then leave it until it is bone dry.',
    dry: 'Wet the place, wait, blot; on cotton paper more than once. What stays comes back with opaque white at the very end.',
  },
  'too pale': {
    wet: 'Wet paint dries paler still: drop in thicker paint of the same puddle now, while it shines.',
    satin: 'Only with paint thicker than what is there, in one touch. If in doubt leave it.',
    cool: `${leaveIt}, then a second wash: thin paint now makes blooms.`,
    dry: 'Judge it on the dry sheet, then glaze once more with the same puddle, a little stronger.',
  },
  'too dark': {
    wet: 'It will dry paler: wait a breath. Still too dark? Blot lightly or tilt the surplus off.',
    satin: 'Lift a little with a thirsty brush, once. It still dries paler than it looks.',
    cool: `${leaveIt}: it dries paler than it looks now.`,
    dry: 'Wet it with a soft brush, wait, blot, without scrubbing. Or make what is beside it darker.',
  },
  muddy: {
    wet: 'Stop stirring. Tilt off what you can, rinse the brush, change the water, and leave it.',
    satin: 'Stop here. More paint or brushing makes more mud.',
    cool: `${leaveIt}: working after the shine has gone is what makes mud.`,
    dry: 'Lift what comes off, let it dry, then glaze with one clean, transparent paint. Fresh water first.',
  },
  'mask tore': {
    wet: 'Leave the mask and the sheet alone now: it comes off bone-dry paper only.',
    satin: 'Leave the mask and the sheet alone now: it comes off bone-dry paper only.',
    cool: `${leaveIt}: damp paper tears under the mask.`,
    dry: 'Stop pulling. Press the fibres flat with the back of a spoon over clean paper; paint there with little water. Take the rest off with a crepe rubber, slowly.',
  },
  'drying too fast': {
    wet: 'Keep the bead wet: a larger brush, more of the puddle, and no going back. Shut out sun and draught.',
    satin:
      'Stop at the nearest border, not in mid-wash. Leave the rest for a second wash on dry paper.',
    cool: `${leaveIt}: a seam you go back into now becomes a bloom.`,
    dry: 'Next time: wet the sheet first, mix more, take smaller areas, stay out of sun and draught.',
  },
};

/** What to do about a trouble while the sheet is as wet as that: one or two sentences. */
export const remedyFor = (trouble: Trouble, wetness: Wetness): string =>
  remedies[trouble][remedyStateOf[wetness]];
