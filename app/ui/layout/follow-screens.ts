const appName = 'Firstwash';

/** 'Wash plan · Two dogs · Firstwash': the heading of a screen first, so that tabs and the way back can be told apart. */
export function titleOf(heading: string, painting: string): string {
  const parts = [heading, painting, appName].filter((part) => part !== '');
  return [...new Set(parts)].join(' · ');
}

/** A screen that was replaced takes the focus with it, and the browser gives it to nothing. */
const isLost = ({ activeElement, body }: Document): boolean =>
  activeElement === null || activeElement === body;

/**
 * Follows what is shown, whenever it comes: a screen fetched only now too. The window is named after its heading, and a
 * new screen takes the focus, so that a screen reader begins at it. `painting` is the title of the open painting, or
 * empty. Answers how to stop.
 */
export function followScreens(root: HTMLElement, painting: () => string): () => void {
  const document = root.ownerDocument;
  let shown: Element | null = null;
  const look = (): void => {
    const main = root.querySelector('main');
    const title = titleOf(main?.querySelector('h1')?.textContent?.trim() ?? '', painting());
    if (document.title !== title) document.title = title;
    if (main === shown) return;
    const isFirst = shown === null;
    shown = main;
    if (!main || isFirst || !isLost(document)) return;
    main.setAttribute('tabindex', '-1');
    main.focus({ preventScroll: true });
  };
  const watching = new MutationObserver(look);
  watching.observe(root, { childList: true, characterData: true, subtree: true });
  look();
  return () => watching.disconnect();
}
