import { bandWord } from '../../../app/model/band-words.ts';
import type { Technique } from '../../../app/model/technique.ts';
import type { PlanFacts, SolvedWash } from './plan-facts.ts';
import { allSmall, hasWhitesToLeave, plannedWhites, whitesIn } from './planned-whites.ts';
import { runsAsBead } from './runs-as-bead.ts';

const order = ['First', 'Second', 'Third', 'Fourth', 'Fifth', 'Sixth', 'Seventh', 'Eighth'];

/** 'First wash', 'Second wash' or 'Second glaze', and 'Darks' for the last of several. */
export function washTitle(wash: number, count: number, technique: Technique): string {
  if (wash === count && count > 1) return 'Darks';
  const name = order[wash - 1] ?? `${wash}th`;
  return technique === 'glaze' ? `${name} wash, a glaze` : `${name} wash`;
}

/** 'light', 'light and mid'. */
function bandsInWords({ reading }: PlanFacts, bands: readonly number[]): string {
  const words = bands.map((band) => bandWord(band, reading.bands.length));
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

const others: Record<string, string> = { ground: 'subject', subject: 'ground' };

/** What the first wash of a passage goes over: the sheet, or the passage up to the line. */
function areaInWords(facts: PlanFacts, passage: string, whole: string): string {
  const whites = hasWhitesToLeave(facts, passage);
  const other = others[passage];
  if (other === undefined) return whites ? `${whole} but the whites` : 'the sheet';
  return `the ${passage} up to the ${other}${whites ? ', but not the whites' : ''}`;
}

function firstPrompt(
  facts: PlanFacts,
  passage: string,
  wash: SolvedWash,
  technique: Technique,
): string {
  if (technique === 'wet-in-wet') {
    const all = `Wet ${areaInWords(facts, passage, 'everything')}`;
    return `${all}, wait for an even sheen, then lay the colour in thicker than on dry paper. Stop as the shine starts to go.`;
  }
  const area = areaInWords(facts, passage, 'the sheet').replace('the sheet', 'the whole sheet');
  const all = `Wash ${area}`;
  const thin = wash.weak.length > 0 ? ' Thinner where it stays lightest.' : '';
  const how = runsAsBead(wash.mixes)
    ? 'Keep a bead running and do not go back in.'
    : 'Join stroke to wet stroke and do not go back in.';
  return `${all}, top to bottom.${thin} ${how}`;
}

/** The prompt of a wash: one or two sentences. */
export function washPrompt(
  facts: PlanFacts,
  passage: string,
  wash: SolvedWash,
  technique: Technique,
  last: boolean,
): string {
  if (wash.wash === 1) return firstPrompt(facts, passage, wash, technique);
  const bands = bandsInWords(facts, [...wash.weak, ...wash.full]);
  if (technique === 'wet-in-wet') {
    return `Wet the ${bands} shapes gently with a wide soft brush, no scrubbing. At an even sheen lay in thicker paint.`;
  }
  if (last) {
    return `Paint the ${bands} shapes strong enough the first time, big ones before small. Then leave them alone.`;
  }
  if (technique === 'glaze') {
    return `One thin pass over the ${bands} shapes and all that is darker. Do not scrub, do not go back.`;
  }
  return `Paint the ${bands} shapes and all that is darker in one go; join shapes that touch.`;
}

/** What becomes of the edges where none is to be softened (R15). */
export const edgesInWords = (wet: boolean): string =>
  wet ? 'Its edges run soft by themselves.' : 'Its edges stay as the brush leaves them, crisp.';

/** What may go under in the first wash of a passage; empty where nothing may. */
export function lightsInWords(facts: PlanFacts, passage: string): string {
  const lights = whitesIn(facts, passage, plannedWhites(facts)?.last ?? []);
  const { length } = lights;
  if (length === 0) return '';
  const small = allSmall(lights) ? 'small ' : '';
  return length === 1
    ? `One ${small}white may be painted over: it comes back at the end.`
    : `${length} ${small}whites may be painted over: they come back at the end.`;
}
