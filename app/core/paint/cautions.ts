import { joinWords } from '../words/numbers.ts';

/** What a metal, or whatever else asks for care, does: plain words from memory, no safety data sheet. */
interface CautionRow {
  readonly of: string;
  readonly people: string;
  /** What to do with the rinse water; null where nothing is said. */
  readonly water: string | null;
}

/** A pigment's row of data/pigment-properties.json, as far as it is looked at here. */
interface CautiousRow {
  readonly cautions: readonly CautionRow[];
  readonly mustNotBeOffered: boolean;
}

/** What to do with any paint (data/pigment-properties.json, `forAll`). */
export const careWithPaint =
  'Do not eat, do not point the brush with the mouth, do not spray or sand.';

/**
 * Worth a warning is what can harm people who paint with it, or what the rinse water must be kept for. Not what is low
 * for people, or bound in the paint, and asks nothing of the water: `careWithPaint` is enough for it.
 */
export function isWorthAWarning({ people, water }: CautionRow): boolean {
  const harmless = /^low( for people)?( \([^)]*\))?$|\bbound\b|not in paint/.test(people);
  const waterIsFree = water === null || /little is released$/.test(water);
  return !(harmless && waterIsFree);
}

const poison = 'poison, even in small amounts over time; what is left is hazardous waste.';
const cadmium =
  'poison if swallowed or breathed in as dust, suspected of causing cancer. Let the rinse water settle: the sludge is hazardous waste, not for the drain.';
const allergy =
  'may cause allergy, and the dust is harmful. Let the rinse water settle: keep the sludge out of the drain.';
const dust = 'the dust is harmful.';

/** The same in a painter's words. What all paint asks for is said by `careWithPaint`. */
const wordsOf: ReadonlyMap<string, string> = new Map([
  ['lead', poison],
  ['mercury', poison],
  ['arsenic', poison],
  ['chromium(VI)', 'poison, causes cancer; what is left is hazardous waste.'],
  ['cadmium', cadmium],
  ['selenium', cadmium],
  ['cobalt', allergy],
  ['nickel', allergy],
  ['vanadium', dust],
  ['manganese', 'the dust harms the nerves.'],
  ['zinc', 'harms life in water; as little as you can down the drain.'],
  ['cyanide complex', 'never heat it or bring it to strong acid, which sets a poisonous gas free.'],
]);

/** Said differently in the table and to a painter. */
const namesSaid: ReadonlyMap<string, string> = new Map([
  ['chromium(VI)', 'chromate'],
  ['cyanide complex', 'a cyanide complex'],
]);

const label = 'Check the label.';
const never = 'Do not paint with it.';

const saidOf = ({ of, people }: CautionRow): string => wordsOf.get(of) ?? `${people}.`;

/** Metals that ask for the same are named together: 'Contains cobalt and nickel: ...' */
function sentenceOf(words: string, rows: readonly CautionRow[]): string {
  const names = rows.filter((row) => saidOf(row) === words);
  return `Contains ${joinWords(names.map(({ of }) => namesSaid.get(of) ?? of))}: ${words}`;
}

/** One sentence a danger, ending at the label; null where nothing is worth a warning. */
export function cautionOf({ cautions, mustNotBeOffered }: CautiousRow): string | null {
  const rows = cautions.filter(isWorthAWarning);
  if (rows.length === 0) return null;
  const words = [...new Set(rows.map(saidOf))];
  const said = words.map((each) => sentenceOf(each, rows));
  return [...said, ...(mustNotBeOffered ? [never] : []), label].join(' ');
}

/** Cautions of the pigments of one tube: each sentence once, the label at the end. */
export function joinCautions(all: readonly string[]): string | null {
  const sentences = all.flatMap((each) =>
    each
      .replaceAll(label, '')
      .trim()
      .split(/ (?=Contains )/),
  );
  const once = [...new Set(sentences)].filter(Boolean);
  const last = all.some((each) => each.endsWith(label)) ? [label] : [];
  return once.length > 0 ? [...once, ...last].join(' ') : null;
}
