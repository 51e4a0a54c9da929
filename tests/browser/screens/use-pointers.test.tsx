import { afterEach, expect, test, vi } from 'vitest';
import { placeInPx, type StageEvent, usePointers } from '../../../app/ui/pointer/use-pointers.ts';
import { type Shown, shown } from './shown.ts';

let screen: Shown;
const told: string[] = [];
const say =
  (word: string) =>
  (event?: StageEvent, place: readonly number[] = []) => {
    told.push([word, event?.pointerId ?? '', ...place].join(' ').trim());
  };

function Stage({ most }: { most: 1 | 2 }) {
  const { places, handlers } = usePointers({
    most,
    captures: true,
    placeOf: placeInPx,
    onDown(event, place) {
      say('down')(event, place);
      return !(event.target as HTMLElement).dataset.refused;
    },
    onOneMore: () => say('one more')(),
    onMove: say('move'),
    onHover: say('hover'),
    onUp(event, place) {
      say('up')(event, place);
      told.push(`left ${places.size}`);
    },
    onCancel: () => say('cancel')(),
  });
  return (
    <div data-stage="" style={{ position: 'fixed', left: '10px', top: '20px' }} {...handlers}>
      <span data-child="">held</span>
      <span data-refused="yes">refused</span>
    </div>
  );
}

const captured = vi.fn();

function show(most: 1 | 2): (kind: string, id: number, selector?: string, button?: number) => void {
  // Made-up pointers can't be captured by the browser.
  vi.spyOn(HTMLElement.prototype, 'setPointerCapture').mockImplementation(captured);
  told.length = 0;
  screen = shown(<Stage most={most} />);
  return (kind, id, selector = '[data-stage]', button = 0) => {
    const place = { clientX: 10 + id, clientY: 20 };
    screen.host.querySelector(selector)?.dispatchEvent(
      new PointerEvent(kind, {
        pointerId: id,
        button,
        bubbles: true,
        cancelable: true,
        ...place,
      }),
    );
  };
}

afterEach(() => {
  screen.leave();
  captured.mockClear();
  vi.restoreAllMocks();
});

test('a pointer is followed from down to up, and captured; before and after it only hovers', () => {
  const send = show(1);
  send('pointermove', 1);
  send('pointerdown', 1);
  send('pointermove', 1);
  send('pointerup', 1);
  send('lostpointercapture', 1); // as the browser sends it after every end
  send('pointermove', 1);
  expect(told).toEqual(['hover 1', 'down 1 1 0', 'move 1 1 0', 'up 1 1 0', 'left 0', 'hover 1']);
  expect(captured).toHaveBeenCalledExactlyOnceWith(1);
});

test('no other button counts, and what is refused is neither followed nor captured', () => {
  const send = show(1);
  send('pointerdown', 1, '[data-stage]', 2);
  send('pointerdown', 1, '[data-refused]');
  send('pointerup', 1);
  expect(told).toEqual(['down 1 1 0']);
  expect(captured).not.toHaveBeenCalled();
});

test('of more pointers than are followed only their coming is told', () => {
  const send = show(1);
  send('pointerdown', 1);
  send('pointerdown', 2);
  send('pointerup', 2);
  send('pointerup', 1);
  expect(told).toEqual(['down 1 1 0', 'one more', 'up 1 1 0', 'left 0']);
});

test('two pointers are followed each by itself', () => {
  const send = show(2);
  send('pointerdown', 1);
  send('pointerdown', 2);
  send('pointermove', 2);
  send('pointerup', 1);
  send('pointercancel', 2);
  expect(told).toEqual(['down 1 1 0', 'down 2 2 0', 'move 2 2 0', 'up 1 1 0', 'left 1', 'cancel']);
});

test('a capture lost by a child is no end, one lost by the stage itself is', () => {
  const send = show(1);
  send('pointerdown', 1, '[data-child]');
  send('lostpointercapture', 1, '[data-child]');
  send('pointermove', 1);
  send('lostpointercapture', 1);
  send('pointermove', 1);
  expect(told).toEqual(['down 1 1 0', 'move 1 1 0', 'cancel', 'hover 1']);
});
