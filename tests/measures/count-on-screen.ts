/** What she meets on a screen. */
export interface ScreenCount {
  /** Words that can be read without scrolling or opening anything. */
  readonly wordsInView: number;
  /** Words she reads when she scrolls it to its end. */
  readonly words: number;
  readonly controlsInView: number;
  readonly controls: number;
  /** How often the height of the window: the longer of the page and what scrolls in it. */
  readonly screens: number;
}

/**
 * Counts within the page (handed over to it whole, so that it uses nothing from outside): words are runs of letters
 * or figures that are painted; what only a screen reader says is left out. A control counts where it is enabled.
 */
export function countOnScreen(): ScreenCount {
  const isPainted = (element: Element): boolean => {
    const { width, height } = element.getBoundingClientRect();
    return (
      element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) &&
      width > 2 &&
      height > 2
    );
  };
  /** The part of the window an element may show in: cut by everything round it that scrolls. */
  const windowOf = (element: Element): readonly [top: number, bottom: number] => {
    let [top, bottom] = [0, innerHeight];
    for (let each: Element | null = element; each; each = each.parentElement) {
      if (each === document.body || getComputedStyle(each).overflowY === 'visible') continue;
      const box = each.getBoundingClientRect();
      top = Math.max(top, box.top);
      bottom = Math.min(bottom, box.bottom);
    }
    return [top, bottom];
  };
  const isInView = ({ top, bottom }: DOMRect, element: Element): boolean => {
    const middle = (top + bottom) / 2;
    const [from, to] = windowOf(element);
    return middle > from && middle < to;
  };
  scrollTo(0, 0);
  const count = { words: 0, wordsInView: 0, controls: 0, controlsInView: 0 };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const parent = node.parentElement;
    if (!parent || parent.closest('script, style, .spoken') || !isPainted(parent)) continue;
    for (const word of (node.textContent ?? '').matchAll(/\S*[\p{L}\p{N}]\S*/gu)) {
      const range = document.createRange();
      range.setStart(node, word.index);
      range.setEnd(node, word.index + word[0].length);
      const box = range.getBoundingClientRect();
      if (box.width === 0) continue;
      count.words++;
      if (isInView(box, parent)) count.wordsInView++;
    }
  }
  const controls = 'a[href], button, input, select, textarea, summary, [role=slider]';
  for (const each of document.querySelectorAll(controls)) {
    if (each.matches(':disabled') || each.closest('[inert]')) continue;
    // A mark drawn by its label: the label is what is touched.
    const shown = isPainted(each) ? each : each.closest('label');
    if (!shown || !isPainted(shown)) continue;
    count.controls++;
    if (isInView(shown.getBoundingClientRect(), shown)) count.controlsInView++;
  }
  const scrolling = [document.documentElement, ...document.querySelectorAll('main *')];
  const most = Math.max(...scrolling.map(({ scrollHeight }) => scrollHeight));
  return { ...count, screens: Number((most / innerHeight).toFixed(1)) };
}
