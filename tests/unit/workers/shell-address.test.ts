import { describe, expect, test } from 'vitest';
import { shellAddress } from '../../../workers/shell-address.ts';

const lead = (asked: string, scope: string) => shellAddress(new URL(asked), new URL(scope))?.href;

describe('where a page address leads', () => {
  test.each([
    ['https://a.example/', 'https://a.example/'],
    ['https://a.example/?utm_source=x', 'https://a.example/'],
    ['https://a.example/index.html', 'https://a.example/'],
    ['https://a.example/sub/', 'https://a.example/sub/'],
  ])('%s is the shell itself', (asked, scope) => {
    expect(lead(asked, scope)).toBeUndefined();
  });

  test.each([
    ['https://a.example/plan/3', 'https://a.example/', 'https://a.example/#/plan/3'],
    [
      'https://a.example/sub/plan?x=1',
      'https://a.example/sub/',
      'https://a.example/sub/?x=1#/plan',
    ],
    ['https://a.example//b.example/x', 'https://a.example/', 'https://a.example/#//b.example/x'],
  ])('%s is a route of it', (asked, scope, expected) => {
    expect(lead(asked, scope)).toBe(expected);
  });
});
