import { h, options, render } from 'preact';

/** What stands for an element of the page here: a component that draws nothing needs no more of it. */
const bareElement = () => ({
  ...{
    nodeType: 1,
    childNodes: [],
    firstChild: null,
    namespaceURI: 'http://www.w3.org/1999/xhtml',
  },
  ...{ insertBefore: () => {}, removeChild: () => {}, contains: () => false },
});

/**
 * A hook run as in a component that draws nothing, without a browser; `current` is what it answered last, `settled`
 * once effects have run.
 */
export function runHook<T>(hook: () => T): {
  readonly current: T;
  again(): void;
  settled(): Promise<void>;
  leave(): void;
} {
  const page = globalThis as { document?: unknown };
  const before = page.document;
  const frames = options.requestAnimationFrame;
  page.document ??= {};
  options.requestAnimationFrame = (callback) => queueMicrotask(callback);
  const place = bareElement() as unknown as HTMLElement;
  const found = { current: undefined as T };
  const Host = (_: { turn: number }) => {
    found.current = hook();
    return null;
  };
  let turn = 0; // another each time, else nothing is drawn anew
  const draw = (): void => render(h(Host, { turn: turn++ }), place);
  draw();
  return {
    get current() {
      return found.current;
    },
    again: draw,
    settled: () => new Promise((done) => setImmediate(done)),
    leave() {
      render(null, place);
      page.document = before;
      if (frames) options.requestAnimationFrame = frames;
      else delete options.requestAnimationFrame;
    },
  };
}
