import { type Edge, type EdgeKind, type EdgeWish, edgeLimits } from '../../reading/edges/edge.ts';
import type { Reading } from '../../reading/reading.ts';
import { lengthInWords, valuesApart, widthInWords } from '../numbers.ts';
import { bandWord } from '../reading-words.ts';

type Sides = Pick<Reading, 'slots' | 'bands' | 'families'>;

/** 'the light dull green', 'the white'. */
function sideInWords({ slots, bands, families }: Sides, index: number): string {
  const slot = slots[index];
  if (!slot) return 'the rest';
  if (slot.reserve) return 'the white';
  const colour = families.find(({ id }) => id === slot.family)?.name ?? `colour ${slot.family}`;
  return `the ${bandWord(slot.band, bands.length)} ${colour}`;
}

const kindSentence: Record<EdgeKind, string> = {
  hard: 'A hard edge: clear and sharp.',
  soft: 'A soft edge: clear, but blurred.',
  found: 'A found edge: slight, but sharp.',
  lost: 'A lost edge: hardly seen.',
};

function differenceSentence(edge: Edge, reading: Sides): string {
  const [one, two] = [sideInWords(reading, edge.a), sideInWords(reading, edge.b)];
  const [lightA = 0, lightB = 0] = [edge.a, edge.b].map((i) => reading.slots[i]?.lab[0]);
  const difference = `Difference ${valuesApart(edge.contrast)}`;
  // A slight difference may run against that of the whole shapes: then no side is named the lighter.
  const told = edge.contrast >= edgeLimits.lost && one !== two && lightA !== lightB;
  if (!told) return `${difference}.`;
  const [lighter, darker] = lightA > lightB ? [one, two] : [two, one];
  return `${difference}: ${lighter} is lighter than ${darker}.`;
}

/** What was measured along an edge, sentence by sentence, the kind first. */
export function edgeSentences(edge: Edge, reading: Sides): string[] {
  const said = [kindSentence[edge.kind], differenceSentence(edge, reading)];
  const long = `${lengthInWords(edge.lengthMm)} long`;
  said.push(
    edge.kind === 'lost'
      ? `It is ${long}.`
      : `It changes over ${widthInWords(edge.widthMm)} on your sheet and is ${long}.`,
  );
  if (edge.graded) said.push('So wide that it is a graded wash rather than an edge.');
  if (edge.heldByColour) said.push('Same value, different colour.');
  if (edge.outOfFocus)
    said.push('Out of focus here: the lens may have made it soft, not the subject.');
  return said;
}

/** What a wish asks for beyond the brush; empty where nothing stands in its way. */
export function wishCaution({ contrast }: Edge, wish: EdgeWish): string {
  if (wish === 'lose' && contrast >= edgeLimits.plain)
    return `The sides are ${valuesApart(contrast)} apart: carry the darker one across while wet, or the edge will show.`;
  if (wish === 'sharpen' && contrast < edgeLimits.lost)
    return `The sides are only ${valuesApart(contrast)} apart: make one of them darker too, or there is nothing to see.`;
  return '';
}
