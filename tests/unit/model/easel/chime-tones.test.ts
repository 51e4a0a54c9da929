import { expect, test } from 'vitest';
import { chimeTones, shakes } from '../../../../app/model/chime-tones.ts';

const ends = ([0, 1, 2, 3] as const).map((louder) => chimeTones({ kind: 'end', louder }));

test('each reminder is louder and longer than the one before, and none is over full', () => {
  for (let i = 1; i < ends.length; i++) {
    expect(ends[i]?.length).toBeGreaterThan(ends[i - 1]?.length ?? 0);
    expect(ends[i]?.[0]?.loudness).toBeGreaterThan(ends[i - 1]?.[0]?.loudness ?? 1);
  }
  for (const { loudness, lengthSeconds } of ends.flat()) {
    expect(loudness).toBeLessThanOrEqual(1);
    expect(lengthSeconds).toBeGreaterThan(0);
  }
});

test('the shine is softer than any end, a step has no tone', () => {
  const [shine] = chimeTones({ kind: 'shine', louder: 0 });
  expect(shine?.loudness).toBeLessThan(ends[0]?.[0]?.loudness ?? 0);
  expect(chimeTones({ kind: 'step', louder: 0 })).toEqual([]);
});

test('it shakes as often as it sounds', () => {
  expect(shakes({ kind: 'end', louder: 2 })).toHaveLength(2 * (ends[2]?.length ?? 0));
});
