import { expect, test } from 'vitest';
import { comparedSheets, measuresOf } from '../../../../app/core/session/compared-sheets.ts';
import type { EventBody } from '../../../../app/core/session/session-event.ts';
import { measuresInWords } from '../../../../app/core/words/session/compared-sheets.ts';
import { judgedSample } from '../../../support/compare/judged.ts';
import { eventSample } from '../../../support/storage/kept-samples.ts';

const taken = { wetness: 'dry', bare: [] } as const;
const lost = { slot: 3, at: [0.5, 0.5], areaMm2: 300, kept: false, measured: [80, 0, 5] } as const;

const compared = (photoId: string, within4 = 0.9): EventBody => ({
  kind: 'compared',
  photoId,
  key: 'wash/sheet/1',
  ...measuresOf(judgedSample(), taken),
  within4,
});

test('the last comparison of every photo stands, in the order in which they were taken', () => {
  const told = [compared('one'), compared('two'), compared('one', 0.8)];
  const notes = comparedSheets(told.map((what, seq) => eventSample('s', seq, what)));
  expect(notes.map(({ photoId, within4, at }) => [photoId, within4, at])).toEqual([
    ['one', 0.8, 2000],
    ['two', 0.9, 1000],
  ]);
});

test('what she took back is no comparison any more', () => {
  const log = [
    eventSample('s', 0, compared('one')),
    eventSample('s', 1, { kind: 'taken-back', events: ['s 0'] }),
  ];
  expect(comparedSheets(log)).toEqual([]);
});

test.each([
  [judgedSample(), 'Good: left as it was. 97 % of the sheet had its planned value.'],
  [
    judgedSample({
      bands: [
        {
          ...{ band: 2, share: 0.4, expected: 60, measured: 50 },
          ...{ difference: -10, verdict: 'clearly darker' },
        },
      ],
      whites: [lost, { ...lost, areaMm2: 10 }],
    }),
    '97 % of the sheet had its planned value; the mid values clearly darker and one white lost.',
  ],
])('in words (%#)', (comparison, words) => {
  expect(measuresInWords(measuresOf(comparison, taken), 3)).toBe(words);
});
