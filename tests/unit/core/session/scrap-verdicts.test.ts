import { describe, expect, test } from 'vitest';
import type { ScrapHue, ScrapVerdict } from '../../../../app/core/paint/paint-at-fault.ts';
import type { Mix } from '../../../../app/core/plan/plan.ts';
import {
  comparedPuddles,
  isSamePuddle,
  scrapLessons,
  scrapPuddles,
  tellingTry,
  verdictOf,
} from '../../../../app/core/session/scrap-verdicts.ts';
import { lastAct, type SessionEvent } from '../../../../app/core/session/session-event.ts';
import { recordSession } from '../../../../app/core/session/session-record.ts';
import { lastTimeWords, scrapInWords } from '../../../../app/core/words/session/scrap-verdicts.ts';
import { device, minute, steps } from '../../../support/session/session-log.ts';

const blue = { parts: [{ paint: 'blue', parts: 1 }], load: 2 };
const green = {
  parts: [
    { paint: 'blue', parts: 1 },
    { paint: 'yellow', parts: 3 },
  ],
  load: 2,
};
const scrap = (verdict: ScrapVerdict['depth'], puddle = blue, hue?: ScrapHue) =>
  ({ kind: 'scrap', ...puddle, verdict, ...(hue && { hue }) }) as const;
const saidOf = (events: readonly SessionEvent[]) =>
  comparedPuddles(events).map(({ tries }) => tries.map(({ depth, hue }) => hue ?? depth));

describe('puddles compared on a scrap', () => {
  test('each puddle by itself, tries in order', () => {
    const it = device();
    it.log({ kind: 'started' }, scrap('weaker'), scrap('right', green));
    it.wait(10 * minute);
    it.log(scrap('right'));
    const compared = comparedPuddles(it.events);
    expect(saidOf(it.events)).toEqual([['weaker', 'right'], ['right']]);
    expect(verdictOf(compared, blue)).toMatchObject({ depth: 'right', hue: null });
    expect(verdictOf(compared, { ...blue, load: 8 })).toBeNull();
  });

  test('told again at once it is a correction; a wet finger twice is one', () => {
    const it = device();
    it.log(scrap('weaker'));
    it.wait(100);
    it.log(scrap(null)); // the finger's second touch of the same button
    it.wait(5000);
    it.log(scrap('stronger'));
    expect(saidOf(it.events)).toEqual([['stronger']]);
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
    expect(act?.act).toBe('scrap');
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
    expect(scrapInWords(compared, blue)).toBe('; on the scrap too pale, then right');
    expect(scrapInWords(compared, green)).toBe('');
    const after = recordSession({ id: 'p', steps: [], mixes: [] }, it.events);
    expect({ ...after, totalMinutes: 0 }).toEqual({ ...before, totalMinutes: 0 });
  });
});

describe('too much of a colour', () => {
  test('is told of the same scrap as its depth, each time both, and stands in the record', () => {
    const it = device();
    it.log(scrap('stronger', green));
    it.wait(5000);
    it.log(scrap('stronger', green, 'blue'));
    const compared = comparedPuddles(it.events);
    expect(compared[0]?.tries).toMatchObject([{ depth: 'stronger', hue: 'blue' }]);
    expect(scrapInWords(compared, green)).toBe('; on the scrap too strong and too blue');
    it.wait(10 * minute);
    it.log(scrap(null, green, 'dull'));
    expect(saidOf(it.events)).toEqual([['blue', 'dull']]);
    it.wait(2 * minute);
    it.log(scrap(null, green));
    expect(saidOf(it.events)).toEqual([['blue']]);
  });

  const toldBy = (puddle: typeof green, ...events: ReturnType<typeof scrap>[]) => {
    const it = device();
    for (const event of events) {
      it.log(event);
      it.wait(10 * minute);
    }
    const [compared] = comparedPuddles(it.events);
    if (!compared) throw new Error(`no scrap of ${puddle.load}`);
    const told = tellingTry(compared);
    return told && [told.depth, told.hue, it.events.findIndex(({ id }) => id === told.event)];
  };

  test('a mix tells of its paints by the first hue that is off, after water or not', () => {
    const told = toldBy(
      green,
      scrap('weaker', green),
      scrap(null, green, 'blue'),
      scrap(null, green, 'red'),
    );
    expect(told).toEqual([null, 'blue', 1]);
    expect(toldBy(green, scrap('stronger', green), scrap('right', green))).toBeNull();
  });

  test('a paint by itself tells by its first depth, unless that is right', () => {
    expect(toldBy(blue, scrap('stronger'), scrap('right'))).toEqual(['stronger', null, 0]);
    expect(toldBy(blue, scrap('right'), scrap('stronger'))).toBeNull();
    expect(toldBy(blue, scrap(null, blue, 'red'))).toBeNull();
  });

  test('painted again: what it was', () => {
    const it = device();
    it.log(scrap(null, green, 'blue'));
    const lessons = scrapLessons([{ sessionId: 'a', paintingId: 'p', steps, events: it.events }]);
    expect(lastTimeWords(lessons, green)).toBe('Last time it came out too blue.');
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
  const evening = (
    sessionId: string,
    days: number,
    ...verdicts: ('weaker' | 'right' | 'stronger')[]
  ) => {
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
  expect(lastTimeWords(lessons, blue)).toBe('Last time it came out too pale: take more paint.');
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
