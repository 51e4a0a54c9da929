import { options, render, type VNode } from 'preact';

/** An element of a page that shows nothing: what is set on it, put into it and told to it. */
export class BareElement extends EventTarget {
  readonly nodeType: number = 1;
  readonly namespaceURI = 'http://www.w3.org/1999/xhtml';
  readonly localName: string;
  readonly attributes: { name: string; value: string }[] = [];
  /** Properties of its style that were set. */
  readonly set = new Map<string, unknown>();
  readonly style = { setProperty: (name: string, value: unknown) => this.set.set(name, value) };
  readonly childNodes: BareElement[] = [];
  parentNode: BareElement | null = null;
  data = '';

  constructor(localName: string) {
    super();
    this.localName = localName;
  }
  get ownerDocument(): unknown {
    return barePage;
  }
  get firstChild(): BareElement | null {
    return this.childNodes[0] ?? null;
  }
  get nextSibling(): BareElement | null {
    const beside = this.parentNode?.childNodes ?? [];
    return beside[beside.indexOf(this) + 1] ?? null;
  }
  insertBefore(child: BareElement, before: BareElement | null): BareElement {
    child.remove();
    const at = before ? this.childNodes.indexOf(before) : this.childNodes.length;
    this.childNodes.splice(at, 0, child);
    child.parentNode = this;
    return child;
  }
  appendChild(child: BareElement): BareElement {
    return this.insertBefore(child, null);
  }
  removeChild(child: BareElement): void {
    child.remove();
  }
  remove(): void {
    const beside = this.parentNode?.childNodes;
    beside?.splice(beside.indexOf(this), 1);
    this.parentNode = null;
  }
  contains(other: unknown): boolean {
    return this === other || this.childNodes.some((child) => child.contains(other));
  }
  setAttribute(name: string, value: unknown): void {
    this.removeAttribute(name);
    this.attributes.push({ name, value: String(value) });
  }
  removeAttribute(name: string): void {
    const at = this.attributes.findIndex((each) => each.name === name);
    if (at >= 0) this.attributes.splice(at, 1);
  }
  getAttribute(name: string): string | null {
    return this.attributes.find((each) => each.name === name)?.value ?? null;
  }
  getBoundingClientRect = () => ({ left: 0, top: 0, width: 100, height: 100 });
  setPointerCapture = (): void => {};
  focus = (): void => {};
  /** Of a canvas, as whoever draws the page says. */
  getContext = (kind: string): unknown => contextOf(this, kind);
  /** All of one kind in it, in their order. */
  all(localName: string): BareElement[] {
    return this.childNodes.flatMap((child) => [
      ...(child.localName === localName ? [child] : []),
      ...child.all(localName),
    ]);
  }
  /** What it says. */
  get words(): string {
    return this.localName === '#text'
      ? this.data
      : this.childNodes.map((child) => child.words).join('');
  }
  /** Tells it an event with these facts. */
  tell(kind: string, facts: object = {}): Event {
    const event = Object.assign(new Event(kind, { cancelable: true }), facts);
    this.dispatchEvent(event);
    return event;
  }
}

class BareText extends BareElement {
  override readonly nodeType = 3;
  constructor(data: string) {
    super('#text');
    this.data = data;
  }
}

let contextOf = (_: BareElement, _kind: string): unknown => null;

const barePage = {
  createElement: (name: string) => new BareElement(name),
  createElementNS: (_: string, name: string) => new BareElement(name),
  createTextNode: (data: string) => new BareText(data),
};

/**
 * What a component draws, without a browser; `settled` once effects have run and what was changed is drawn. `context` is
 * that of its canvases.
 */
export function drawBare(what: VNode, context: typeof contextOf = () => null) {
  contextOf = context;
  const page = globalThis as { document?: unknown };
  const before = page.document;
  const frames = options.requestAnimationFrame;
  page.document = barePage;
  options.requestAnimationFrame = (callback) => queueMicrotask(callback);
  const body = new BareElement('body');
  const draw = (next: VNode): void => render(next, body as unknown as Element);
  draw(what);
  return {
    body,
    draw,
    settled: () => new Promise<void>((done) => setImmediate(done)),
    leave() {
      render(null, body as unknown as Element);
      page.document = before;
      if (frames) options.requestAnimationFrame = frames;
      else delete options.requestAnimationFrame;
    },
  };
}
