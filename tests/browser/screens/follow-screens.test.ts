import { afterEach, beforeEach, expect, test } from 'vitest';
import { followScreens, titleOf } from '../../../app/ui/layout/follow-screens.ts';

let root: HTMLElement;
let stop = (): void => {};
let before = '';
beforeEach(() => {
  before = document.title;
  root = document.createElement('div');
  document.body.append(root);
});
afterEach(() => {
  stop();
  root.remove();
  document.title = before;
});

const screenOf = (heading: string, more = ''): HTMLElement => {
  const main = document.createElement('main');
  main.innerHTML = `<h1>${heading}</h1><button>${heading}</button>${more}`;
  return main;
};
const show = (heading: string): HTMLElement => {
  const main = screenOf(heading);
  root.replaceChildren(main);
  return main;
};

test('the window is named after the screen and the painting, each name once', () => {
  expect(titleOf('Wash plan', 'Two dogs')).toBe('Wash plan · Two dogs · Firstwash');
  expect(titleOf('Firstwash', '')).toBe('Firstwash');
  expect(titleOf('', '')).toBe('Firstwash');
});

test('a screen that comes late has the focus, and its name is the title', async () => {
  show('Setting up');
  stop = followScreens(root, () => 'Two dogs');
  expect(document.title).toBe('Setting up · Two dogs · Firstwash');
  root.querySelector('button')?.focus();
  const plan = show('Wash plan'); // what had the focus is gone
  await expect.poll(() => document.activeElement).toBe(plan);
  expect(document.title).toBe('Wash plan · Two dogs · Firstwash');
  const heading = plan.querySelector('h1');
  if (heading?.firstChild) heading.firstChild.nodeValue = '5 of 12: First wash';
  await expect.poll(() => document.title).toBe('5 of 12: First wash · Two dogs · Firstwash');
});

test('what she has the focus on keeps it', async () => {
  const outside = document.createElement('button');
  root.after(outside);
  show('One');
  stop = followScreens(root, () => '');
  outside.focus();
  show('Two');
  await expect.poll(() => document.title).toBe('Two · Firstwash');
  expect(document.activeElement).toBe(outside);
  outside.remove();
});
