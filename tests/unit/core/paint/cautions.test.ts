import { expect, test } from 'vitest';
import {
  careWithPaint,
  cautionOf,
  isWorthAWarning,
  joinCautions,
} from '../../../../app/core/paint/cautions.ts';
import traits from '../../../../app/core/paint/data/pigment-properties.json';
import { pigmentTable } from '../../../../app/core/paint/paint-box.ts';
import { traitsOfNames } from '../../../../app/core/paint/paint-traits.ts';

const all = traits.pigments.flatMap(({ cautions }) => cautions);
const metals = (rows: typeof all) => [...new Set(rows.map((row) => row.of))].sort();

test('what is low for people, or bound, and free of the drain is no warning', () => {
  expect(metals(all.filter((row) => !isWorthAWarning(row)))).toEqual([
    'antimony',
    'barium',
    'carbon black',
    'chromium(III)',
    'copper',
    'tin',
  ]);
});

test('every metal that warns has a sentence of its own that ends at the label', () => {
  for (const row of all.filter(isWorthAWarning)) {
    const said = cautionOf({ cautions: [row], mustNotBeOffered: false });
    expect(said).toMatch(/^Contains [a-z ]+: .+\. Check the label\.$/);
    expect(said).not.toContain(`${row.people}.`); // in a painter's words, not the table's
  }
});

test('metals that ask for the same are named together', () => {
  const teal = traits.pigments.find(({ commonName }) => commonName === 'cobalt teal');
  expect(teal && cautionOf(teal)).toBe(
    'Contains cobalt and nickel: may cause allergy, and the dust is harmful. Let the rinse water settle: keep the sludge out of the drain. Check the label.',
  );
});

test.each(traits.pigments.filter(({ mustNotBeOffered }) => mustNotBeOffered).map(({ ci }) => ci))(
  '%s typed by her: she is told not to paint with it',
  (ci) => {
    expect(traitsOfNames([ci], pigmentTable).caution).toMatch(
      /poison.*hazardous waste.*Do not paint with it\. Check the label\.$/,
    );
    expect(traitsOfNames(['PB29', ci], pigmentTable).caution).toMatch(/Do not paint with it/);
  },
);

test('of several pigments each sentence stands once, and the label at the end', () => {
  const cobalt = traitsOfNames(['PB28'], pigmentTable).caution ?? '';
  const both = traitsOfNames(['PB74'], pigmentTable).caution ?? '';
  const joined = joinCautions([cobalt, both, cobalt]);
  expect(joined?.match(/Contains/g)).toHaveLength(2);
  expect(joined?.match(/Check the label/g)).toHaveLength(1);
  expect(joinCautions([])).toBeNull();
});

test('what all paint asks for is what the table says', () => {
  expect(careWithPaint).toBe(traits.forAll);
});
