import { expect, test } from 'vitest';
import { dryingHistory } from '../../../../app/core/session/drying-history.ts';
import { device, minute } from '../../../support/session/session-log.ts';
import { washSteps } from '../../../support/session/wash-steps.ts';

function evening(sessionId: string, daysLater: number, dryAfter: number) {
  const it = device();
  it.sleep(daysLater * 24 * 60 * minute);
  it.log({ kind: 'started' }, { kind: 'step-begun', key: 'wash/ground/1' });
  it.wait(minute);
  it.log({ kind: 'step-done', key: 'wash/ground/1' });
  it.wait(dryAfter * minute);
  it.log({ kind: 'dry-now', key: 'dry/ground/1' });
  return { sessionId, paintingId: 'p', steps: washSteps, events: it.events };
}

// Limits and figures are (own): the docstrings of what is tested say why.
test('rows stand in the order of the evenings, each reckoned with what those before had taught', () => {
  const first = evening('a', 0, 150);
  const second = evening('b', 1, 150);
  const { rows, lessons } = dryingHistory([second, first]);
  expect(rows.map(({ sessionId }) => sessionId)).toEqual(['a', 'b']);
  expect(rows.map(({ real }) => real)).toEqual([150, 150]);
  expect(lessons).toHaveLength(2);
  const high = rows.map(({ reckoned }) => reckoned[1]);
  expect(high[1]).toBeGreaterThan(high[0] as number);
});

test('a session without a line, or without taps, leaves no row', () => {
  const empty = { sessionId: 'c', paintingId: 'p', steps: washSteps, events: [] };
  expect(dryingHistory([empty])).toEqual({ lessons: [], rows: [], paper: null });
});
