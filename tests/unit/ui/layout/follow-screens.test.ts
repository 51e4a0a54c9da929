import { afterEach, beforeEach, expect, test } from 'vitest';
import { followScreens, titleOf } from '../../../../app/ui/layout/follow-screens.ts';

const page = globalThis as { MutationObserver?: unknown };
const before = page.MutationObserver;
let look: () => void;
let watching: boolean;
let shown: { heading: string; focused: number; attributes: string[] } | null;
const document = { title: '', body: {}, activeElement: null as unknown };

beforeEach(() => {
  page.MutationObserver = class {
    constructor(changed: () => void) {
      look = changed;
    }
    observe = () => {
      watching = true;
    };
    disconnect = () => {
      watching = false;
    };
  };
  Object.assign(document, { title: '', activeElement: null });
});
afterEach(() => {
  page.MutationObserver = before;
});

/** A screen with a heading. */
const screen = (heading: string) => {
  const own = {
    ...{ heading, focused: 0, attributes: [] as string[] },
    querySelector: () => ({ textContent: ` ${heading} ` }),
    setAttribute: (name: string, value: string) => own.attributes.push(`${name}=${value}`),
    focus: () => {
      own.focused++;
    },
  };
  shown = own;
  return own;
};
const root = { ownerDocument: document, querySelector: () => shown } as unknown as HTMLElement;

test('a window is named by heading, painting and app, none of them twice or empty', () => {
  expect(titleOf('Wash plan', 'Two dogs')).toBe('Wash plan · Two dogs · Firstwash');
  expect(titleOf('', '')).toBe('Firstwash');
  expect(titleOf('Two dogs', 'Two dogs')).toBe('Two dogs · Firstwash');
});

test('a new screen takes the focus that was lost with the one before, the first one does not', () => {
  const first = screen('Paintings');
  const stop = followScreens(root, () => 'Seed heads');
  expect([document.title, first.focused, watching]).toEqual([
    'Paintings · Seed heads · Firstwash',
    0,
    true,
  ]);
  look();
  expect(first.focused).toBe(0);
  const second = screen('Values');
  look();
  look(); // the same screen still
  expect([second.focused, second.attributes]).toEqual([1, ['tabindex=-1']]);
  expect(document.title).toBe('Values · Seed heads · Firstwash');
  document.activeElement = document.body;
  const third = screen('Whites');
  look();
  expect(third.focused).toBe(1);
  document.activeElement = {}; // she is somewhere already
  const fourth = screen('Edges');
  look();
  expect(fourth.focused).toBe(0);
  stop();
  expect(watching).toBe(false);
});

test('where no screen is there yet nothing is focused', () => {
  shown = null;
  const stop = followScreens(root, () => '');
  expect(document.title).toBe('Firstwash');
  const late = screen('Paintings');
  look();
  expect(late.focused).toBe(0); // it is the first
  stop();
});
