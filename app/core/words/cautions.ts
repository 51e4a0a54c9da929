import { capitalize, joinWords } from './numbers.ts';

/** What a metal, or whatever else asks for care, does: plain words from memory, no safety data sheet. */
interface CautionRow {
  readonly of: string;
  readonly people: string;
  /** What to do with the rinse water; null where nothing is said. */
  readonly water: string | null;
}

/** A pigment's row of data/pigment-properties.json, as far as it is looked at here. */
export interface CautiousRow {
  readonly cautions: readonly CautionRow[];
  readonly mustNotBeOffered: boolean;
}

/** What any paint asks for (common practice, no source); data/pigment-properties.json, `forAll`. */
export const careWithPaint =
  'No food, drink or smoke at the table, no brush in the mouth, no spraying or sanding; wash your hands afterwards. Keep children and animals away from it all.';

/** Whose word counts: said once wherever cautions are told. */
export const deferral =
  'Cautions are from memory: the label, the safety data sheet and your local rules come first.';

/** Of old tubes without a label (from memory). */
export const careWithOldTubes =
  'An old tube without a label may hold lead, mercury or arsenic: do not use it.';

export const notKnownHere =
  'Not known here: ask the label and the safety data sheet before you use it.';
const notKnownGoingOn = notKnownHere[0].toLowerCase() + notKnownHere.slice(1);
const nothingSpecial = 'No special care known.';
const boundCopper = `Copper is bound in it: wipe the brush before you rinse it. ${nothingSpecial}`;

/** What becomes of the rinse water, the least first. */
const waters = {
  free: '',
  little: 'Wipe the brush before you rinse it: as little as you can down the drain.',
  settle: 'Let the rinse water settle: keep the sludge out of the drain.',
  sludge: 'Let the rinse water settle: the sludge is hazardous waste, not for the drain.',
  waste: 'What is left, rinse water too, is hazardous waste.',
} as const;
type Water = keyof typeof waters;
const waterLadder = Object.keys(waters) as Water[];

interface Effect {
  /** What it does, in a painter's words. */
  readonly does: readonly string[];
  /** Neither swallowed nor breathed in: no dust, no spray. */
  readonly dust: boolean;
  readonly water: Water;
}

const poison = 'poison, even in small amounts';
const ofPoison: Effect = { does: [poison], dust: true, water: 'waste' };
const breathed = 'harmful if swallowed or breathed in';
const ofCadmium: Effect = {
  does: ['poison if swallowed or breathed in', 'suspected of causing cancer'],
  dust: true,
  water: 'sludge',
};
const ofAllergy: Effect = { does: ['may cause allergy', breathed], dust: true, water: 'settle' };

/** Worth a warning (from memory). What is low for people, or bound in the paint, is only named beside these. */
const effects: ReadonlyMap<string, Effect> = new Map([
  ['lead', ofPoison],
  ['mercury', ofPoison],
  ['arsenic', ofPoison],
  ['chromium(VI)', { does: [poison, 'causes cancer'], dust: true, water: 'waste' }],
  ['cadmium', ofCadmium],
  ['selenium', ofCadmium],
  ['cobalt', ofAllergy],
  ['nickel', ofAllergy],
  ['vanadium', { does: [breathed], dust: true, water: 'free' }],
  ['antimony', { does: [breathed], dust: true, water: 'free' }],
  ['manganese', { does: ['its dust harms the nerves'], dust: true, water: 'free' }],
  ['gamboge resin', { does: ['poison if swallowed'], dust: true, water: 'free' }],
  ['zinc', { does: ['harms life in water'], dust: false, water: 'little' }],
  [
    'cyanide complex',
    {
      does: ['harmless as paint, but no flame, hot-air gun or strong acid near it'],
      dust: false,
      water: 'free',
    },
  ],
]);

/** Said differently in the table and to a painter. */
const namesSaid: ReadonlyMap<string, string> = new Map([
  ['chromium(VI)', 'chromate'],
  ['chromium(III)', 'chromium'],
  ['cyanide complex', 'a cyanide complex'],
]);

/** Whether it can harm people who paint with it, or the rinse water must be kept for it. */
export const isWorthAWarning = ({ of }: Pick<CautionRow, 'of'>): boolean => effects.has(of);

const noDust = 'Keep it out of the mouth; never sand, scrape, spray or splatter it.';
const never = 'Do not paint with it.';
const contains = 'Contains ';

/** Of a pigment all metals by name, what they do, and what to do; null where nothing is worth a warning. */
export function cautionOf({ cautions, mustNotBeOffered }: CautiousRow): string | null {
  const found = cautions.flatMap(({ of }) => effects.get(of) ?? []);
  if (found.length === 0) return null;
  const names = cautions.map(({ of }) => namesSaid.get(of) ?? of);
  const does = [...new Set(found.flatMap((each) => each.does))].join('; ');
  const water = Math.max(...found.map((each) => waterLadder.indexOf(each.water)));
  return [
    `${contains}${joinWords(names)}: ${does}.`,
    mustNotBeOffered && never,
    found.some(({ dust }) => dust) && noDust,
    waters[waterLadder[water]],
  ]
    .filter(Boolean)
    .join(' ');
}

/** Cautions of the pigments of one tube: each sentence once, first what it contains; of rinse water the gravest. */
export function joinCautions(all: readonly string[]): string | null {
  const sentences = [...new Set(all.flatMap((each) => each.trim().split(/(?<=\.) (?=[A-Z])/)))];
  const said = waterLadder.map((water) => waters[water]).filter(Boolean);
  const gravest = said.findLast((water) => sentences.includes(water));
  const isNext = (one: string): boolean => (said as string[]).includes(one) && one !== gravest;
  const kept = sentences.filter((one) => one && !isNext(one));
  const first = kept.filter((one) => one.startsWith(contains));
  const others = kept.filter((one) => !first.includes(one) && one !== gravest);
  return [...first, ...others, ...(gravest ? [gravest] : [])].join(' ') || null;
}

/** What is to be minded of a paint whose caution is null: that nothing is remembered, or that nobody is known to have looked. */
export function noCautionInWords(isKnown: boolean, metals: readonly string[]): string {
  if (!isKnown) return notKnownHere;
  return metals.includes('copper') ? boundCopper : nothingSpecial;
}

/** Whether `care` (a caution, or the sentence above) is to be seen at once; else it is enough to be found. */
export const asksForCare = ({ care }: { readonly care: string }): boolean =>
  !care.endsWith(nothingSpecial);

/** `care` in two or three words, for a row of a list; the whole of it stands a touch away. */
export const careInShort = ({ care }: { readonly care: string }): string =>
  care.startsWith(contains) && care.includes(':')
    ? care.slice(0, care.indexOf(':'))
    : 'Has a caution';

/** A paint as far as its caution goes. */
export interface CautiousPaint {
  readonly name: string;
  /** Colour Index names; none where nobody tells the pigments. */
  readonly ci?: readonly string[];
  readonly properties: { readonly caution: string | null };
}

/** By its words, so that it holds for hers and for those of former tables too. */
const dustWords =
  /\b(dust|sand|sanding|scrape|scraping|spray|spraying|splatter|breathed|lead|mercury|arsenic|chromate|cadmium|selenium|cobalt|nickel|vanadium|antimony|manganese)\b/i;

/** The paints whose caution forbids all that raises dust or a spray: blade, sanding, spraying, splatter. */
export const paintsWithoutDust = <P extends CautiousPaint>(paints: readonly P[]): P[] =>
  paints.filter(({ properties: { caution } }) => caution !== null && dustWords.test(caution));

/**
 * 'Cadmium yellow contains cadmium: ...'; a caution of her own stands as she wrote it. Null where there is none, and
 * the pigments are told.
 */
export function cautionInWords({
  name,
  ci,
  properties: { caution },
}: CautiousPaint): string | null {
  const isUnknown = caution ? caution === notKnownHere : ci?.length === 0;
  if (isUnknown) return `${capitalize(name)} is ${notKnownGoingOn}`;
  if (!caution) return null;
  return capitalize(
    caution.startsWith(contains)
      ? `${name} contains ${caution.slice(contains.length)}`
      : `${name}: ${caution}`,
  );
}

/** Longer lists of names make a prompt too long, signs (own). */
const longestNames = 50;

/** The first two names, where these are short: 'cadmium yellow, cobalt blue and others'. */
export function namesInShort(names: readonly string[]): string {
  const said = joinWords(names.length > 2 ? [...names.slice(0, 2), 'others'] : names);
  return said.length > longestNames ? 'some of these paints' : said;
}

/** 'Emerald green: poison. Do not paint with it.' */
export const poisonInWords = (names: readonly string[]): string =>
  `${capitalize(joinWords(names))}: poison. ${never}`;

/** What all paints that must raise no dust ask for while they are in the brush. */
export const noDustInWords = (names: readonly string[]): string =>
  `${capitalize(joinWords(names))}: out of the mouth; no sanding, scraping, spraying or splattering.`;

/** What to mind while these paints are in the brush: poisons, those without dust, and others that ask for care. */
export function paintsToMind<P extends CautiousPaint>(
  paints: readonly P[],
): Readonly<Record<'poisons' | 'noDust' | 'others', readonly P[]>> {
  const noDust = paintsWithoutDust(paints);
  return {
    poisons: paints.filter(({ properties }) => properties.caution?.includes(never)),
    noDust,
    others: paints.filter(
      (paint) =>
        paint.properties.caution !== null && !noDust.includes(paint) && cautionInWords(paint),
    ),
  };
}
