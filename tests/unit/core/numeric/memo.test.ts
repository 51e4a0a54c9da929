import { expect, it } from 'vitest';
import { LastAnswers } from '../../../../app/core/numeric/memo.ts';

it('keeps the last answers only, those asked for again longest', () => {
  const answers = new LastAnswers<number>(2);
  answers.keep('one', 1);
  answers.keep('two', 2);
  expect(answers.get('one')).toBe(1);
  answers.keep('three', 3);
  expect([answers.get('one'), answers.get('two'), answers.get('three')]).toEqual([1, undefined, 3]);
});

it('knows nothing of what another one keeps', () => {
  const answers = new LastAnswers<number>(2);
  answers.keep('one', 1);
  expect(new LastAnswers<number>(2).get('one')).toBeUndefined();
});
