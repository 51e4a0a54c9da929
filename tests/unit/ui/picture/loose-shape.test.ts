import { describe, expect, test } from 'vitest';
import type { SubjectFacts } from '../../../../app/core/reading/subject/subject.ts';
import { subjectSentence } from '../../../../app/core/words/reading/subject.ts';
import {
  shapeAfterKey,
  startShape,
  strokeOfShape,
} from '../../../../app/ui/picture/loose-shape.ts';

const facts = (subject: number, ground: number, out: number, lost: number): SubjectFacts => ({
  share: 0.3,
  meanLightness: { subject, ground },
  line: [],
  standsOutShare: out,
  lostShare: lost,
});

describe('how the subject stands, in words', () => {
  test.each([
    [facts(70, 40, 0.95, 0), 'clearly lighter than its background and stands out nearly all round'],
    [facts(70, 40, 0.95, 0), 'soften it where it matters least'],
    [facts(40, 47, 0.6, 0.3), 'a little darker than its background and stands out along most'],
    [facts(40, 47, 0.6, 0.3), 'About a third of its line is lost'],
    [facts(50, 52, 0.05, 0.8), 'as light as its background and hardly stands out anywhere'],
    [facts(50, 52, 0.05, 0.8), 'make the background lighter or darker'],
  ])('%#: %s', (known, words) => {
    expect(subjectSentence(known)).toContain(words);
  });
});

describe('an oval by keys', () => {
  test('arrows move it and keep its middle in the picture', () => {
    expect(shapeAfterKey(startShape, 'ArrowRight', false)?.centre).toEqual([0.52, 0.5]);
    let shape = startShape;
    for (let n = 0; n < 20; n++) shape = shapeAfterKey(shape, 'ArrowUp', true) ?? shape;
    expect(shape.centre).toEqual([0.5, 0]);
  });

  test('plus, minus, comma and full stop size it, within limits', () => {
    const wide = shapeAfterKey(startShape, '.', false);
    expect(wide?.half[0]).toBeGreaterThan(startShape.half[0]);
    expect(wide?.half[1]).toBe(startShape.half[1]);
    let shape = startShape;
    for (let n = 0; n < 60; n++) shape = shapeAfterKey(shape, '-', false) ?? shape;
    expect(shape.half).toEqual([0.03, 0.03]);
    expect(shapeAfterKey(startShape, 'x', false)).toBeNull();
  });

  test('becomes a closed stroke round its middle', () => {
    for (const [x, y] of strokeOfShape(startShape)) {
      expect(Math.hypot((x - 0.5) / 0.25, (y - 0.5) / 0.25)).toBeCloseTo(1, 9);
    }
  });
});
