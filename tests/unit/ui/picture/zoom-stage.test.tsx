import { signal } from '@preact/signals';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { wholePicture, type Zoom } from '../../../../app/ui/picture/picture-zoom.ts';
import { ZoomStage } from '../../../../app/ui/picture/zoom-stage.tsx';
import { type BareElement, drawBare } from '../../../support/ui/bare-page.ts';

const page = globalThis as { ResizeObserver?: unknown };
const before = page.ResizeObserver;
let watched: { turned: () => void; of: BareElement | null; ended: boolean };
let drawn: ReturnType<typeof drawBare>;

beforeEach(() => {
  page.ResizeObserver = class {
    constructor(turned: () => void) {
      watched = { turned, of: null, ended: false };
    }
    observe = (of: BareElement) => {
      watched.of = of;
    };
    disconnect = () => {
      watched.ended = true;
    };
  };
});
afterEach(() => {
  drawn.leave();
  page.ResizeObserver = before;
});

function open(zoom: Zoom) {
  const view = signal(zoom);
  drawn = drawBare(
    <ZoomStage zoom={view} ratio={1.5}>
      <p>picture</p>
    </ZoomStage>,
  );
  const [place] = drawn.body.all('div') as [BareElement];
  const moved = () => drawn.body.all('div').find(({ set }) => set.has('--scale'))?.set;
  return { view, place, moved };
}

test('the picture lies as the view says, and the way back to the whole is there while it is near', async () => {
  const { view, place, moved } = open({ scale: 4, centre: [0.25, 0.6] });
  expect(Number(moved()?.get('--right'))).toBeCloseTo(1, 9);
  expect(Number(moved()?.get('--down'))).toBeCloseTo(-0.4, 9);
  expect([Number(moved()?.get('--scale')), Number(moved()?.get('--ratio'))]).toEqual([4, 1.5]);
  expect(place.getAttribute('data-zoomed')).toBe('true');
  const [button] = drawn.body.all('button') as [BareElement];
  button.tell('click');
  expect(view.value).toEqual(wholePicture);
  await drawn.settled();
  expect(place.getAttribute('data-zoomed')).toBeNull();
  expect(drawn.body.all('button')).toEqual([]);
});

test('when the device is turned the view stays within the picture', async () => {
  const { view } = open({ scale: 2, centre: [0.1, 0.9] });
  await drawn.settled();
  Object.assign(watched.of ?? {}, { clientWidth: 300, clientHeight: 200 });
  watched.turned();
  expect(view.value).toEqual({ scale: 2, centre: [0.25, 0.75] });
  expect(watched.ended).toBe(false);
  drawn.leave();
  await drawn.settled();
  expect(watched.ended).toBe(true);
});
