import { expect, test } from 'vitest';
import { cssColour, type Lab } from '../../../../app/core/colour/lab.ts';
import type { Mix } from '../../../../app/core/plan/plan.ts';
import { amountsFor } from '../../../../app/ui/mixes/puddle-list.tsx';
import { coloursOf, PuddleRow, partsSaid } from '../../../../app/ui/mixes/puddle-row.tsx';
import { drawBare } from '../../../support/ui/bare-page.ts';

// Mixes, marks and their colours are made here.
const mix = (id: string, puddle: string | null, expected: Lab, more: Partial<Mix> = {}): Mix =>
  ({ ...{ id, puddle, expected, family: 1, parts: [{ paint: 'p', parts: 1 }] }, ...more }) as Mix;
const [pale, strong, dark] = [
  [80, 0, 0],
  [50, 0, 0],
  [20, 5, 5],
] as const;
const mark = (mixId: string, lab: Lab) => ({ mix: mixId, lab, shape: 0 }) as never;

test('a puddle is shown from thin to strong; of what is set with it the darkest alone', () => {
  const uses = [
    mix('a', 'A', strong, { weaker: { expected: pale } as never }),
    mix('b', 'A', dark),
  ];
  expect(coloursOf(uses, [])).toEqual([pale, strong, dark]);
  expect(coloursOf(uses, [mark('x', dark)])).toEqual([pale, strong, dark]);
  expect(coloursOf(uses, [mark('a', strong), mark('b', dark), mark('b', pale)])).toEqual([dark]);
});

test('parts are told by their figures where there are several', () => {
  const inWords = () => 'mostly blue';
  expect(partsSaid([{ paint: 'p', parts: 1 }], inWords)).toBe('mostly blue');
  expect(
    partsSaid(
      [
        { paint: 'p', parts: 5 },
        { paint: 'q', parts: 1 },
      ],
      inWords,
    ),
  ).toMatch(/^mostly blue, 5/);
});

test('each puddle has one line, of mixes that have one: its letter, its colours, what it is for', () => {
  const mixes = [
    mix('a', 'A', pale),
    mix('b', 'B', strong, { family: 2 }),
    mix('c', 'A', dark),
    mix('d', null, dark),
  ];
  const familyName = (family: number): string => `family ${family}`;
  const drawn = drawBare(<PuddleRow mixes={mixes} familyName={familyName} />);
  const rows = drawn.body.all('li');
  expect(rows.map(({ words }) => words)).toEqual(['A for family 1', 'B for family 2']);
  const colours = rows[0]
    ?.all('span')
    .map(({ style }) => (style as { background?: string }).background);
  expect(colours?.filter(Boolean)).toEqual([pale, dark].map(cssColour));
  drawn.draw(
    <PuddleRow mixes={mixes} marks={[mark('b', dark), mark('b', pale)]} familyName={familyName} />,
  );
  expect(drawn.body.all('li').map(({ words }) => words)).toEqual([
    'A for family 1',
    'B for 2 touches',
  ]);
  drawn.draw(<PuddleRow mixes={[mix('d', null, dark)]} familyName={familyName} />);
  expect(drawn.body.all('ul')).toEqual([]);
  drawn.leave();
});

test('amounts are told where puddles are mixed', () => {
  const sheet = { widthMm: 1, heightMm: 1 } as never;
  expect(
    (['puddles', 'wash', 'dry', 'lift'] as const).map((kind) => amountsFor({ kind }, { sheet })),
  ).toEqual([...[sheet, sheet, undefined, undefined]]);
});
