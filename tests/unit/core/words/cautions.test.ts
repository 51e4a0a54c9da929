import { expect, test } from 'vitest';
import traits from '../../../../app/core/paint/data/pigment-properties.json';
import { pigmentTable } from '../../../../app/core/paint/paint-box.ts';
import { traitsOfNames } from '../../../../app/core/paint/paint-traits.ts';
import {
  asksForCare,
  careInShort,
  careWithPaint,
  cautionInWords,
  cautionOf,
  isWorthAWarning,
  joinCautions,
  namesInShort,
  noDustInWords,
  paintsToMind,
  paintsWithoutDust,
  poisonInWords,
} from '../../../../app/core/words/cautions.ts';

// What the pigments do is from memory, as in the table; the sentences are this project's own.
const rows = [...traits.pigments, ...traits.hazardOnly];
const all = rows.flatMap(({ cautions }) => cautions);
const metals = (list: typeof all) => [...new Set(list.map((row) => row.of))].sort();

test('what is low for people, or bound, and free of the drain is no warning', () => {
  expect(metals(all.filter((row) => !isWorthAWarning(row)))).toEqual([
    'barium',
    'carbon black',
    'chromium(III)',
    'copper',
    'tin',
  ]);
});

test('the poisonous pigments of old boxes have a row and must not be painted with', () => {
  const poisons =
    'PW1 PW2 PY31 PY32 PY33 PY34 PY36 PY39 PY41 PY46 PO21 PO23 PR103 PR104 PR105 PR106 PR113 PG15 PG21 PG22';
  expect(rows.filter(({ mustNotBeOffered }) => mustNotBeOffered).map(({ ci }) => ci)).toEqual(
    expect.arrayContaining(poisons.split(' ')),
  );
  for (const ci of poisons.split(' ')) {
    const said = /^Contains .*poison.*Do not paint with it\..*hazardous waste/;
    expect(traitsOfNames([ci], pigmentTable).caution).toMatch(said);
    expect(traitsOfNames(['PB29', ci], pigmentTable).caution).toMatch(said);
  }
  for (const ci of ['PB33', 'PR107', 'PB32', 'NY24'])
    expect(traitsOfNames([ci], pigmentTable).caution).toMatch(/never sand, scrape, spray/);
});

test('every pigment that warns names all its metals, and forbids mouth, dust and spray where one may harm', () => {
  for (const row of rows) {
    const said = cautionOf(row);
    if (!row.cautions.some(isWorthAWarning)) {
      expect(said, row.ci).toBeNull();
      continue;
    }
    for (const { of } of row.cautions) {
      const name = of.replace('(VI)', '').replace('(III)', '').replace('chromium', 'chrom');
      expect(said, row.ci).toContain(name);
    }
    const harms = row.cautions.some(({ people }) => /dust|poison|as cadmium/.test(people));
    expect(/out of the mouth; never sand, scrape, spray or splatter/.test(said ?? ''), row.ci).toBe(
      harms,
    );
  }
});

test.each([
  ['PB36', /^Contains cobalt and chromium:/],
  ['PR108', /^Contains cadmium and selenium:/],
  ['PO20', /^Contains cadmium and selenium:/],
  ['PY53', /^Contains nickel and antimony:/],
  ['PG50', /^Contains cobalt.*nickel/],
  ['PY35', /cadmium.*sludge is hazardous waste, not for the drain\.$/],
  ['PB28', /keep the sludge out of the drain\.$/],
  ['PW4', /zinc: harms life in water\. Wipe the brush before you rinse it/],
  ['PB27', /cyanide complex: harmless as paint, but no flame, hot-air gun/],
])('%s: %s', (ci, said) => {
  expect(traitsOfNames([ci], pigmentTable).caution).toMatch(said);
});

test('of several pigments each sentence stands once, what they contain first, the gravest water last', () => {
  const of = (ci: string) => traitsOfNames([ci], pigmentTable).caution ?? '';
  const joined = joinCautions([of('PB28'), of('PB74'), of('PB28'), of('PY35'), of('PW4')]) ?? '';
  expect(joined).toMatch(/^Contains cobalt: .* Contains cobalt and zinc: .* Contains cadmium/);
  expect(joined.match(/never sand/g)).toHaveLength(1);
  expect(joined).toMatch(/\. Let the rinse water settle: the sludge is hazardous waste[^.]*\.$/);
  expect(joined.match(/rinse/g)).toHaveLength(1);
  expect(joinCautions([])).toBeNull();
});

const paint = (name: string, caution: string | null) => ({ name, properties: { caution } });
const cadmium = paint('cadmium yellow', traitsOfNames(['PY35'], pigmentTable).caution);
const cobalt = paint('cobalt blue', traitsOfNames(['PB28'], pigmentTable).caution);
const zinc = paint('zinc white', traitsOfNames(['PW4'], pigmentTable).caution);
const hers = paint('my red', 'Smells: open a window.');
const ochre = paint('yellow ochre', null);

test('with paints in the brush what forbids dust is said in one sentence, the rest of each paint', () => {
  expect(paintsWithoutDust([cadmium, zinc, hers, ochre, cobalt])).toEqual([cadmium, cobalt]);
  const none = { poisons: [], noDust: [], others: [] };
  expect(paintsToMind([cadmium, zinc, hers, ochre, cobalt])).toEqual({
    ...none,
    noDust: [cadmium, cobalt],
    others: [zinc, hers],
  });
  expect(noDustInWords(['cadmium yellow', 'cobalt blue'])).toBe(
    'Cadmium yellow and cobalt blue: out of the mouth; no sanding, scraping, spraying or splattering.',
  );
  expect([zinc, hers].map(cautionInWords)).toEqual([
    'Zinc white contains zinc: harms life in water. Wipe the brush before you rinse it: as little as you can down the drain.',
    'My red: Smells: open a window.',
  ]);
  expect(paintsToMind([ochre])).toEqual(none);
  const flake = paint('flake white', traitsOfNames(['PW1'], pigmentTable).caution);
  expect(paintsToMind([flake]).poisons).toEqual([flake]);
  expect(poisonInWords(['flake white'])).toBe('Flake white: poison. Do not paint with it.');
  expect(cautionInWords(ochre)).toBeNull();
  expect(cautionInWords({ ...ochre, ci: ['PY43'] })).toBeNull();
  const untold = { ...paint('mixed green', null), ci: [] };
  expect(cautionInWords(untold)).toBe(
    'Mixed green is not known here: ask the label and the safety data sheet before you use it.',
  );
  expect(paintsToMind([untold])).toEqual(none);
});

test('cautions of former tables and of her own forbid the same', () => {
  for (const words of [
    'Contains nickel: check the label.',
    'Contains cobalt: may cause allergy, and the dust is harmful. Check the label.',
    'No spraying, says the label.',
  ])
    expect(paintsWithoutDust([paint('x', words)])).toHaveLength(1);
  expect(paintsWithoutDust([paint('x', 'Fades: keep it out of the sun.')])).toEqual([]);
});

test('names in a prompt: two at most, none where they are long', () => {
  expect(namesInShort(['cadmium yellow'])).toBe('cadmium yellow');
  expect(namesInShort(['cadmium yellow', 'cobalt blue'])).toBe('cadmium yellow and cobalt blue');
  expect(namesInShort(['cadmium yellow', 'cobalt blue', 'zinc white'])).toBe(
    'cadmium yellow, cobalt blue and others',
  );
  expect(namesInShort(['x'.repeat(51)])).toBe('some of these paints');
});

test('a line of its own is for what asks for care', () => {
  expect(asksForCare({ care: 'No special care known.' })).toBe(false);
  expect(asksForCare({ care: 'Not known here: ask the label.' })).toBe(true);
});

test('what all paint asks for is what the table says', () => {
  expect(careWithPaint).toBe(traits.forAll);
});

test.each([
  [
    'Contains cadmium and zinc: poison if swallowed. Keep it out of the mouth.',
    'Contains cadmium and zinc',
  ],
  ['Stains the skin.', 'Has a caution'],
])('in short, for a row of a list: %s', (care, words) => {
  expect(careInShort({ care })).toBe(words);
});
