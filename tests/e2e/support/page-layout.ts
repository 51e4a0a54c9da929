import type { Page } from '@playwright/test';

/**
 * What is wrong with the layout of what is on screen, in words; empty where nothing is. `targetPx` is
 * the least height of what can be pressed. Looked at as a finger finds it: scrolled into sight first.
 */
export const layoutFaults = (page: Page, targetPx: number): Promise<string[]> =>
  page.evaluate((targetPx) => {
    const faults: string[] = [];
    const named = (element: Element): string =>
      `'${(element.getAttribute('aria-label') ?? element.textContent ?? element.tagName).trim().slice(0, 40)}'`;
    const seen = (element: Element): boolean =>
      element.checkVisibility({ visibilityProperty: true }) && !element.closest('.spoken');
    const all = (selector: string): HTMLElement[] =>
      [...document.querySelectorAll<HTMLElement>(selector)].filter(seen);

    const root = document.documentElement;
    if (root.scrollWidth > innerWidth)
      faults.push(`the page scrolls sideways: ${root.scrollWidth} px in ${innerWidth}`);

    // What lies inert under something else is out of reach on purpose.
    // A control within a line of words needs no height of its own (WCAG 2.2, 2.5.8, exception 'inline').
    const targets = all('button, a[href], summary, input, [role=button], label:has(input)').filter(
      (target) => !target.matches('label input') && !target.closest('[inert]'),
    );
    for (const target of targets) {
      const { height } = target.getBoundingClientRect();
      if (height < targetPx - 0.5) faults.push(`${named(target)} is ${height.toFixed(0)} px high`);
    }

    for (const target of targets) {
      target.scrollIntoView({ block: 'nearest', inline: 'nearest' });
      const box = target.getBoundingClientRect();
      if (box.left < -1 || box.right > innerWidth + 1)
        faults.push(`${named(target)} reaches over the side of the screen`);
      const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
      // What is drawn narrower may be held beside it all the same.
      const isHeld = (across: number): boolean =>
        target.contains(document.elementFromPoint(x + across, y));
      if (box.width < 47.5 && !(isHeld(-23) && isHeld(23)))
        faults.push(`${named(target)} is ${box.width.toFixed(0)} px wide`);
      const top = document.elementFromPoint(x, y);
      if (!top || !(target.contains(top) || top.contains(target)))
        faults.push(
          `${named(target)} is covered by ${top ? named(top) : 'the edge of the screen'}`,
        );
    }

    const texts = all('h1, h2, p, button, a, li, td, th, dt, dd, label, summary, span').filter(
      (element) =>
        [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()),
    );
    for (const text of texts) {
      const { overflowX, overflowY, display } = getComputedStyle(text);
      const over = text.scrollWidth > text.clientWidth + 1 && display !== 'inline';
      if (over && overflowX !== 'auto' && overflowX !== 'scroll')
        faults.push(`${named(text)} is wider than its place`);
      // What a touch opens may be cut until then.
      const cut =
        overflowY === 'hidden' &&
        text.scrollHeight > text.clientHeight + 1 &&
        !text.closest('button[aria-expanded=false]');
      if (cut) faults.push(`${named(text)} is cut off`);
    }

    for (let i = 0; i < targets.length; i++)
      for (let j = i + 1; j < targets.length; j++) {
        const [one, other] = [targets[i] as HTMLElement, targets[j] as HTMLElement];
        if (one.contains(other) || other.contains(one)) continue;
        // Where one of them scrolls in a panel and the other does not, what is out of sight does not count.
        if (one.closest('section') !== other.closest('section')) continue;
        const [a, b] = [one.getBoundingClientRect(), other.getBoundingClientRect()];
        const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        if (across > 2 && down > 2) faults.push(`${named(one)} and ${named(other)} overlap`);
      }
    return faults;
  }, targetPx);
