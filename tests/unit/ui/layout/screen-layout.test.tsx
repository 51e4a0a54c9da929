import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ScreenLayout } from '../../../../app/ui/layout/screen-layout.tsx';
import { type BareElement, drawBare } from '../../../support/ui/bare-page.ts';

// A panel counts as pulled up from 24 px on (own).
const page = globalThis as { Element?: unknown };
const before = page.Element;
const isUp = signal(false);
let drawn: ReturnType<typeof drawBare>;
let panel: BareElement;
const layout = (low = true) => (
  <ScreenLayout
    top="top"
    picture="picture"
    panel="panel"
    actions="actions"
    name="easel"
    {...(low && { isUp })}
  />
);
beforeEach(() => {
  isUp.value = false;
  drawn = drawBare(layout());
  [panel] = drawn.body.all('section') as [BareElement];
});
afterEach(() => {
  drawn.leave();
  page.Element = before;
});
const scroll = (scrollTop: number): void => {
  Object.assign(panel, { scrollTop });
  panel.tell('scroll');
};

test('a low panel is pulled up by scrolling it 24 px, a shaky finger scrolls less', async () => {
  expect(panel.getAttribute('data-low')).toBe('true');
  scroll(23);
  expect(isUp.value).toBe(false);
  scroll(24);
  expect(isUp.value).toBe(true);
  await drawn.settled();
  expect(panel.getAttribute('data-low')).toBeNull();
});

test.each(['pointerup', 'pointercancel', 'pointerleave'])(
  'not while something in it is pressed, until %s',
  (kind) => {
    panel.tell('pointerdown');
    scroll(200);
    expect(isUp.value).toBe(false);
    panel.tell(kind);
    scroll(200);
    expect(isUp.value).toBe(true);
  },
);

test('keys that come into it pull it up, a finger that touches it does not', () => {
  class Focused extends EventTarget {
    constructor(readonly byKeys: boolean) {
      super();
    }
    matches = (selector: string): boolean => selector === ':focus-visible' && this.byKeys;
  }
  page.Element = Focused;
  const come = (target: unknown): void => {
    const event = new Event('focusin');
    Object.defineProperty(event, 'target', { value: target });
    panel.dispatchEvent(event);
  };
  come(null);
  come(new Focused(false));
  expect(isUp.value).toBe(false);
  come(new Focused(true));
  expect(isUp.value).toBe(true);
});

test('a panel without a low place is as high as it must, and says nothing of it', () => {
  drawn.leave();
  drawn = drawBare(layout(false));
  const [own] = drawn.body.all('section') as [BareElement];
  expect(own.getAttribute('data-low')).toBeNull();
  expect(drawn.body.all('main')[0]?.getAttribute('data-hand')).toBe('right');
  expect(drawn.body.words).toBe('toppicturepanelactions');
});
