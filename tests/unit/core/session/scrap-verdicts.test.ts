import { describe, expect, test } from 'vitest';
import type { Mix } from '../../../../app/core/plan/plan.ts';
import {
  comparedPuddles,
  isSamePuddle,
  lastTimeWords,
  type ScrapVerdict,
  scrapInWords,
  scrapLessons,
  scrapPuddles,
  verdictOf,
} from '../../../../app/core/session/scrap-verdicts.ts';
import { lastAct } from '../../../../app/core/session/session-event.ts';
import { recordSession } from '../../../../app/core/session/session-record.ts';
import { device, minute, steps } from '../../../support/session/session-log.ts';

const blue = { parts: [{ paint: 'blue', parts: 1 }], load: 2 };
const green = {
  parts: [
    { paint: 'blue', parts: 1 },
    { paint: 'yellow', parts: 3 },
  ],
  load: 2,
};
const scrap = (verdict: ScrapVerdict | null, puddle = blue) =>
  ({ kind: 'scrap', ...puddle, verdict }) as const;

describe('puddles compared on a scrap', () => {
  test('each puddle by itself, tries in order', () => {
    const it = device();
    it.log({ kind: 'started' }, scrap('weaker'), scrap('right', green));
    it.wait(10 * minute);
    it.log(scrap('right'));
    const compared = comparedPuddles(it.events);
    expect(compared.map(({ tries }) => tries)).toEqual([['weaker', 'right'], ['right']]);
    expect(verdictOf(compared, blue)).toBe('right');
    expect(verdictOf(compared, { ...blue, load: 8 })).toBeNull();
  });

  test('told again at once it is a correction; a wet finger twice is one', () => {
    const it = device();
    it.log(scrap('weaker'));
    it.wait(100);
    it.log(scrap(null)); // the finger's second touch of the same button
    it.wait(5000);
    it.log(scrap('stronger'));
    expect(comparedPuddles(it.events)[0]?.tries).toEqual(['stronger']);
  });

  test('withdrawn, or taken back: it was never told', () => {
    const withdrawn = device();
    withdrawn.log(scrap('weaker'));
    withdrawn.wait(5 * minute);
    withdrawn.log(scrap(null));
    expect(comparedPuddles(withdrawn.events)).toEqual([]);
    const it = device();
    it.log(scrap('weaker'));
    const act = lastAct(it.events);
    expect(act?.words).toBe('Scrap compared');
    it.log({ kind: 'taken-back', events: act?.events ?? [] });
    expect(comparedPuddles(it.events)).toEqual([]);
  });

  test('the record says how they came out, and nothing else of the session moves', () => {
    const it = device();
    it.log({ kind: 'started' });
    const before = recordSession({ id: 'p', steps: [], mixes: [] }, it.events);
    it.log(scrap('weaker'));
    it.wait(5 * minute);
    it.log(scrap('right'));
    const compared = comparedPuddles(it.events);
    expect(scrapInWords(compared, blue)).toBe('; on the scrap weaker, then right');
    expect(scrapInWords(compared, green)).toBe('');
    const after = recordSession({ id: 'p', steps: [], mixes: [] }, it.events);
    expect({ ...after, totalMinutes: 0 }).toEqual({ ...before, totalMinutes: 0 });
  });
});

test('the same puddle: proportions and about the strength, in any order', () => {
  const [b, y] = green.parts as [(typeof green.parts)[0], (typeof green.parts)[0]];
  expect(isSamePuddle(green, { parts: [y, b], load: 2.2 })).toBe(true);
  const doubled = green.parts.map((part) => ({ ...part, parts: 2 * part.parts }));
  expect(isSamePuddle(green, { parts: doubled, load: 2 })).toBe(true);
  expect(isSamePuddle(green, { ...green, load: 3 })).toBe(false);
  expect(isSamePuddle(green, blue)).toBe(false);
});

test('next time: what the mix of the plan did first, in the session last begun', () => {
  const evening = (sessionId: string, days: number, ...verdicts: ScrapVerdict[]) => {
    const it = device();
    it.sleep(days * 24 * 60 * minute);
    for (const verdict of verdicts) {
      it.log(scrap(verdict));
      it.wait(10 * minute);
    }
    return { sessionId, paintingId: 'p', steps, events: it.events };
  };
  const lessons = scrapLessons([
    evening('a', 1, 'stronger'),
    evening('c', 3, 'weaker', 'right'),
    evening('b', 2, 'right'),
  ]);
  expect(lastTimeWords(lessons, blue)).toBe('Last time it came out weaker: take more paint.');
  expect(lastTimeWords(lessons, green)).toBeNull();
  expect(lastTimeWords(scrapLessons([evening('b', 2, 'right')]), blue)).toBeNull();
  expect(lastTimeWords(scrapLessons([evening('a', 1, 'stronger')]), blue)).toMatch(/more water/);
});

test('a puddle of several rows is compared once, at its strongest', () => {
  const row = (id: string, puddle: string | null, load: number): Mix => ({
    ...blue,
    id,
    puddle,
    load,
    wash: 1,
    passage: 'sheet',
    family: 1,
    consistency: 'milk',
    target: null,
    expected: [60, 0, 0],
    expectedWet: [50, 0, 0],
  });
  const puddles = scrapPuddles([
    row('a', 'A', 2),
    row('b', 'B', 1),
    row('c', 'A', 3),
    row('d', null, 0),
  ]);
  expect(puddles.map(({ name, mix, load }) => [name, mix.id, load])).toEqual([
    ['A', 'c', 3],
    ['B', 'b', 1],
  ]);
});
