import { afterEach, beforeEach, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { decidedEdges } from '../../../app/core/decisions/decided-reading.ts';
import { lastDecision } from '../../../app/core/decisions/standing-decisions.ts';
import type { EdgeWish } from '../../../app/core/reading/edges/edge.ts';
import type { Reading } from '../../../app/core/reading/reading.ts';
import { EdgesScreen } from '../../../app/screens/edges/edges-screen.tsx';
import { type MadeStudy, madeStudy } from './made-study.ts';
import { type Shown, shown } from './shown.ts';

let study: MadeStudy;
let screen: Shown;
let first: Reading;

beforeEach(async () => {
  await page.viewport(390, 844);
  study = await madeStudy();
  // Noted decisions are kept like the others.
  screen = shown(
    <EdgesScreen studio={{ ...study.studio, note: study.studio.decide }} paintingId="made" />,
  );
  first = study.seen.value?.reading as Reading;
});
afterEach(() => screen.leave());

const stage = (): HTMLElement => page.getByTestId('place-stage').element() as HTMLElement;
const sentence = () => page.getByTestId('edges-sentence');
const card = () => page.getByTestId('edge-card');

/** A touch at shares of the picture's sides. */
function touch(x: number, y: number): void {
  const { left, top, width, height } = stage().getBoundingClientRect();
  stage().dispatchEvent(
    new MouseEvent('click', {
      clientX: left + x * width,
      clientY: top + y * height,
      detail: 1,
      bubbles: true,
    }),
  );
}

/** Her wishes, by the place across of the upright edges between the stripes. */
function wishes(): Record<string, EdgeWish> {
  const painting = study.studio.painting.value;
  if (!painting) return {};
  const { edges = [] } = decidedEdges(first, painting.decisions, painting.reference);
  return Object.fromEntries(
    edges.flatMap(({ wish, path }) => (wish ? [[(path[0]?.[0] ?? 0).toFixed(1), wish]] : [])),
  );
}

/** She looks at single edges before she has said where the eye should rest. */
const edgesFirst = () => page.getByRole('button', { name: 'Look at the edges first' }).click();

test('an edge is touched, told in words, decided, decided otherwise, taken back', async () => {
  await edgesFirst();
  await expect.element(sentence()).toHaveTextContent('Touch an edge');
  touch(0.21, 0.5);
  await expect.element(card()).toHaveTextContent('A hard edge: clear and sharp.');
  // Stripes of L* 6.3 and 27.6: 2.1 values.
  await expect.element(card()).toHaveTextContent('Difference 2.1 values');
  await expect.element(card()).toHaveTextContent('on your sheet');
  await expect.element(page.getByTestId('chosen-edge')).toBeInTheDocument();

  const before = study.seen.value?.reading;
  await page.getByRole('button', { name: 'Soften a barely damp' }).click();
  await expect.poll(wishes).toEqual({ '0.2': 'soften' });
  expect(study.seen.value?.reading).toEqual(before);
  touch(0.2, 0.4);
  await page.getByRole('button', { name: 'Lose both sides' }).click();
  await expect.poll(wishes).toEqual({ '0.2': 'lose' });
  await expect.element(card()).toHaveTextContent('The sides are 2.1 values apart');
  await page.getByRole('button', { name: 'Take back' }).click();
  await expect.poll(wishes).toEqual({});
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(wishes).toEqual({ '0.2': 'lose' });
});

test('a touch far from any edge says so', async () => {
  await edgesFirst();
  touch(0.1, 0.5);
  await expect.element(sentence()).toHaveTextContent('There is no edge near that place');
  await expect.element(card()).not.toBeInTheDocument();
  touch(0.4, 0.5);
  await expect.element(card()).toBeVisible();
});

test('the centre of interest is set, and what is proposed round it is left or accepted', async () => {
  await expect.element(page.getByTestId('ask-for-focus')).toHaveTextContent('Nearly every edge');
  await expect.element(page.getByRole('region', { name: 'Proposed' })).not.toBeInTheDocument();
  touch(0.8, 0.5); // the first touch is the answer
  await expect.element(page.getByTestId('focus-mark')).toBeVisible();
  await expect.element(page.getByTestId('all-hard')).toBeVisible();
  const painting = () => study.studio.painting.value?.decisions ?? [];
  expect(lastDecision(painting(), 'focus')?.place?.[0]).toBeCloseTo(0.8, 2);

  // The edges at 0.2 and 0.4 are away from it, that at 0.8 is not.
  const proposed = page.getByRole('region', { name: 'Proposed' });
  expect(proposed.element().querySelectorAll('canvas').length).toBeGreaterThan(0); // each is shown
  await proposed.getByRole('button', { name: /^Soften, on the left/ }).click();
  await expect.element(card()).toHaveTextContent('Suggested: soften.');
  await proposed.getByRole('button', { name: 'Leave it, on the left' }).click();
  await expect.poll(wishes).toEqual({ '0.2': 'keep' });
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(wishes).toEqual({});
  await page.getByRole('button', { name: /^Accept all/ }).click();
  await expect.poll(() => Object.keys(wishes()).length).toBeGreaterThan(1);
  expect(Object.keys(wishes())).not.toContain('0.8');
  await expect.element(page.getByText('Nothing more')).toBeVisible();
  await page.getByText('What the lines mean').click();
  await expect.element(page.getByText('As you want it')).toBeVisible();
  await expect.element(page.getByTestId('all-hard')).not.toBeInTheDocument(); // enough are soft now
});

test('by keys alone: the cross is moved to an edge and the edge decided', async () => {
  await edgesFirst();
  stage().focus();
  await userEvent.keyboard('{ArrowLeft>10/}{Enter}');
  await expect.element(card()).toBeVisible();
  const keep = page.getByRole('button', { name: 'Keep as it is' });
  (keep.element() as HTMLElement).focus();
  await userEvent.keyboard('{Enter}');
  await expect.poll(wishes).toEqual({ '0.4': 'keep' });
});

test('everything to press is at least 48 px high, and nothing runs out at the sides', async () => {
  await edgesFirst();
  touch(0.2, 0.5);
  await page.getByRole('button', { name: 'Soften a barely damp' }).click();
  await page.getByText('What the lines mean').click();
  await expect.element(page.getByText('As you want it')).toBeVisible();
  const pressed = [...screen.host.querySelectorAll('button, main a')];
  expect(pressed.length).toBeGreaterThan(7);
  for (const one of pressed) {
    const { height, right } = one.getBoundingClientRect();
    expect(height, one.textContent ?? '').toBeGreaterThanOrEqual(48);
    expect(right).toBeLessThanOrEqual(390);
  }
});
