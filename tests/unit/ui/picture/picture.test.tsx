import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Picture } from '../../../../app/ui/picture/picture.tsx';
import { type BareElement, drawBare } from '../../../support/ui/bare-page.ts';

// When a layer is painted: what is shown at once, what a tap will show and what is wanted ahead when there is time.
const page = globalThis as Record<string, unknown>;
const names = [
  'OffscreenCanvas',
  'requestAnimationFrame',
  'cancelAnimationFrame',
  'requestIdleCallback',
  'cancelIdleCallback',
];
const before = names.map((name) => page[name]);
let frames: Map<number, () => void>;
let idle: Map<number, () => void>;
let painted: string[];
let drawn: ReturnType<typeof drawBare> | null;

/** Does what waits for a frame or for a quiet moment. */
function run(waiting: Map<number, () => void>): void {
  const all = [...waiting.values()];
  waiting.clear();
  for (const work of all) work();
  vi.runAllTimers();
}
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  [frames, idle, painted, drawn] = [new Map(), new Map(), [], null];
  let id = 0;
  const asks = (waiting: Map<number, () => void>) => (work: () => void) => {
    waiting.set(++id, work);
    return id;
  };
  page.requestAnimationFrame = asks(frames);
  page.cancelAnimationFrame = (n: number) => frames.delete(n);
  page.requestIdleCallback = asks(idle);
  page.cancelIdleCallback = (n: number) => idle.delete(n);
  page.OffscreenCanvas = class {
    constructor(
      readonly width: number,
      readonly height: number,
    ) {}
    getContext = () => ({});
    transferToImageBitmap = () => [this.width, this.height];
  };
});
afterEach(() => {
  drawn?.leave();
  for (const [i, name] of names.entries()) page[name] = before[i];
  vi.useRealTimers();
});

const shownSizes: unknown[] = [];
const layer = (name: string) => () => void painted.push(name);
const layers = { colour: layer('colour'), grey: layer('grey'), values: layer('values') };
type Props = Partial<Parameters<typeof Picture>[0]>;
const picture = (more: Props = {}) => (
  <Picture
    label="Seed heads"
    size={{ width: 40, height: 20 }}
    layers={layers}
    show="colour"
    {...more}
  />
);
function draw(more: Props = {}): BareElement {
  const context = { transferFromImageBitmap: (bitmap: unknown) => shownSizes.push(bitmap) };
  if (drawn) drawn.draw(picture(more));
  else drawn = drawBare(picture(more), (_, kind) => (kind === 'bitmaprenderer' ? context : null));
  return drawn.body;
}

test('only what is shown is painted at first, at once and at its size; the others are hidden', () => {
  const body = draw();
  expect(painted).toEqual(['colour']);
  expect(shownSizes.at(-1)).toEqual([40, 20]);
  const canvases = body.all('canvas');
  expect(canvases.map((canvas) => canvas.getAttribute('hidden') !== null)).toEqual([
    ...[false, true, true],
  ]);
  run(frames);
  run(idle);
  expect(painted).toEqual(['colour']);
});

test('what a tap will show is painted in a quiet moment, what is wanted ahead too, each once', () => {
  draw({ tapShows: 'grey', ahead: ['values'] });
  expect(painted).toEqual(['colour']);
  run(idle);
  expect(painted).toEqual(['colour', 'grey', 'values']);
  draw({ show: 'grey', tapShows: 'colour', ahead: ['values'] });
  run(frames);
  run(idle);
  expect(painted).toHaveLength(3);
});

test('a layer that has changed is painted anew once the frame has been shown', () => {
  draw();
  draw({ layers: { ...layers, colour: layer('new colour') } });
  expect(painted).toEqual(['colour']);
  run(frames);
  expect(painted).toEqual(['colour', 'new colour']);
});

test('what is called off before its moment is not painted; without quiet moments it comes soon', () => {
  draw({ tapShows: 'grey' });
  draw({ tapShows: 'values' });
  run(idle);
  expect(painted).toEqual(['colour', 'values']);
  delete page.requestIdleCallback;
  draw({ tapShows: 'grey' });
  vi.advanceTimersByTime(199);
  expect(painted).not.toContain('grey');
  vi.advanceTimersByTime(1);
  expect(painted).toContain('grey');
});

test('a picture that can be tapped is a button, said with what a tap does; under what lies over it, it is not', () => {
  let taps = 0;
  const [button] = draw({ onTap: () => taps++, tapLabel: 'Shows the greys' }).all('button') as [
    BareElement,
  ];
  expect(button.getAttribute('aria-label')).toBe('Seed heads. Shows the greys');
  expect(button.getAttribute('inert')).toBeNull();
  button.tell('click');
  expect(taps).toBe(1);
  const body = draw({ onTap: () => taps++, over: <p>over it</p> });
  const [under] = body.all('button') as [BareElement];
  expect(under.getAttribute('inert')).not.toBeNull();
  expect(under.getAttribute('aria-label')).toBe('Seed heads');
  expect(body.words).toBe('over it');
  expect(draw().all('button')).toEqual([]);
});

test.each([
  [false, false, 1, 1],
  [true, false, -1, 1],
  [false, true, -1, -1],
  [true, true, 1, -1],
])('mirrored %s, upside down %s', (mirrored, upsideDown, x, y) => {
  const all = draw({ turn: { mirrored, upsideDown } }).all('div');
  const set = new Map(all.flatMap((element) => [...element.set]));
  expect([set.get('--flip-x'), set.get('--flip-y'), set.get('--ratio')].map(Number)).toEqual([
    x,
    y,
    2,
  ]);
});
