import { signal } from '@preact/signals';
import { afterAll, afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { createAnalysisClient } from '../../../app/client/analysis-client.ts';
import type { Decision } from '../../../app/core/decisions/painting.ts';
import { subjectStrokes } from '../../../app/core/decisions/subject-strokes.ts';
import type { SubjectStroke } from '../../../app/core/reading/subject/subject.ts';
import { SubjectScreen } from '../../../app/screens/subject/subject-screen.tsx';
import { subjectRequest } from '../../../app/state/painting/opened-reading.ts';
import type { Studio } from '../../../app/state/painting/studio.ts';
import { madeStudy } from './made-study.ts';
import { type Shown, shown } from './shown.ts';

const client = createAnalysisClient();
afterAll(() => client.dispose());

let screen: Shown;
let decisions: () => readonly Decision[];

/** The study's studio, with strokes kept and a line found by the real worker in a picture of a pale disc. */
async function drawingStudio(proposed: SubjectStroke | null = null): Promise<Studio> {
  const { studio } = await madeStudy();
  const canvas = new OffscreenCanvas(400, 300);
  const context = canvas.getContext('2d');
  const painting = studio.painting.value;
  const before = studio.seen.value;
  if (!context || !painting || !before) throw new Error('nothing to draw on');
  context.fillStyle = 'rgb(70 80 70)';
  context.fillRect(0, 0, 400, 300);
  context.fillStyle = 'rgb(220 200 170)';
  context.beginPath();
  context.arc(200, 150, 80, 0, 2 * Math.PI);
  context.fill();
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.95 });
  const reference = await createImageBitmap(blob);
  const seen = signal({
    ...before,
    reading: {
      ...before.reading,
      raster: { width: 400, height: 300 },
      sheet: { widthMm: 400, heightMm: 300 },
      proposedSubject: proposed,
    },
    referenceJpeg: await blob.arrayBuffer(),
  });
  const whole = { centre: [0.5, 0.5], size: [1, 1], turn: 0 } as const;
  const sheet = { format: 'own', widthMm: 400, heightMm: 300 } as const;
  const kept = signal({
    ...painting,
    reference: { ...painting.reference, crop: whole, sheet },
    decisions: [] as readonly Decision[],
  });
  decisions = () => kept.value.decisions;
  return {
    ...studio,
    painting: kept,
    seen,
    pictures: signal({ reference, grey: reference }),
    async note(decision) {
      const id = String(kept.value.decisions.length + 1);
      const made = { ...decision, id, at: 0 } as Decision;
      kept.value = { ...kept.value, decisions: [...kept.value.decisions, made] };
    },
    subjectLine: (leaving, strokes) =>
      client.subjectLine(leaving, subjectRequest(kept.value, seen.value, strokes)),
  };
}

const stage = (): HTMLElement => page.getByTestId('stroke-stage').element() as HTMLElement;
const sentence = () => page.getByTestId('subject-sentence');

function pointer(kind: string, x: number, y: number): void {
  const place = stage().getBoundingClientRect();
  stage().dispatchEvent(
    new PointerEvent(kind, {
      pointerId: 1,
      clientX: place.left + x * place.width,
      clientY: place.top + y * place.height,
      bubbles: true,
      cancelable: true,
    }),
  );
}

function draw(path: readonly (readonly [number, number])[]): void {
  path.forEach(([x, y], i) => {
    pointer(i === 0 ? 'pointerdown' : 'pointermove', x, y);
  });
  const [x, y] = path.at(-1) ?? [0, 0];
  pointer('pointerup', x, y);
}

const round = (centreX: number, centreY: number, radius: number) =>
  Array.from({ length: 40 }, (_, i) => {
    const angle = (i / 40) * 2 * Math.PI;
    return [centreX + radius * 0.75 * Math.cos(angle), centreY + radius * Math.sin(angle)] as const;
  });

beforeEach(async () => {
  await page.viewport(390, 844);
  // Made-up pointers can't be captured by the browser; the gesture does without.
  vi.spyOn(HTMLElement.prototype, 'setPointerCapture').mockImplementation(() => undefined);
  screen = shown(<SubjectScreen studio={await drawingStudio()} paintingId="made" />);
});
afterEach(() => {
  screen.leave();
  vi.restoreAllMocks();
});

const modes = (): string[] =>
  subjectStrokes(decisions(), {
    crop: { centre: [0.5, 0.5], size: [1, 1], turn: 0 },
    sheet: { format: 'own', widthMm: 400, heightMm: 300 },
  }).map(({ mode }) => mode);

test('circled, corrected, taken back, started again', async () => {
  await expect.element(page.getByText('Draw a loose line round the subject')).toBeVisible();
  draw(round(0.5, 0.5, 0.3));
  await expect.element(sentence()).toHaveTextContent('The subject is clearly lighter');
  await expect.element(page.getByText(/Subject, value [78]/)).toBeVisible();
  await expect
    .element(page.getByRole('img', { name: 'Your subject, its background dimmed' }))
    .toBeInTheDocument();

  await page.getByRole('button', { name: 'Add' }).click();
  draw([
    [0.8, 0.3],
    [0.85, 0.3],
  ]);
  await expect.poll(modes).toEqual(['circle', 'add']);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(modes).toEqual(['circle']);
  await page.getByRole('button', { name: 'Start again' }).click();
  await expect.poll(modes).toEqual([]);
  await expect.element(page.getByText('Draw a loose line round the subject')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click(); // even starting again can be taken back
  await expect.element(sentence()).toHaveTextContent('The subject is clearly lighter');
});

test('a proposed subject is taken or refused by one tap, and comes back by Undo', async () => {
  screen.leave();
  const path = round(0.5, 0.5, 0.3);
  const studio = await drawingStudio({ mode: 'circle', path, brush: 0 });
  screen = shown(<SubjectScreen studio={studio} paintingId="made" />);
  const proposal = page.getByTestId('subject-proposal');
  await expect.element(proposal).toHaveTextContent('Is it your subject?');
  expect(modes()).toEqual([]);
  await page.getByRole('button', { name: 'Yes, take it' }).click();
  await expect.element(sentence()).toHaveTextContent('The subject is clearly lighter');
  await expect.poll(() => proposal.query()).toBeNull();
  expect(modes()).toEqual(['circle']);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.element(proposal).toBeVisible();
  await page.getByRole('button', { name: 'No', exact: true }).click();
  await expect.poll(() => proposal.query()).toBeNull();
  expect(modes()).toEqual([]);
  await expect.element(page.getByText('Draw a loose line round the subject')).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect.element(proposal).toBeVisible();
});

test('an oval is laid down by keys alone', async () => {
  stage().focus();
  await userEvent.keyboard('{ArrowUp}{+}{+}{-}{Enter}');
  await expect.element(sentence()).toHaveTextContent('The subject is');
  expect(modes()).toEqual(['circle']);
});

test('a tap is no circle; a line beside the picture says what to do', async () => {
  draw([
    [0.5, 0.5],
    [0.505, 0.5],
  ]);
  expect(decisions()).toEqual([]);
  pointer('pointerdown', 0.3, 0.3);
  pointer('pointermove', 0.6, 0.3);
  pointer('pointercancel', 0.6, 0.6);
  expect(decisions()).toEqual([]);
});

test('the browser takes no touches from the picture; everything to press is at least 48 px', async () => {
  expect(getComputedStyle(stage()).touchAction).toBe('none');
  draw(round(0.5, 0.5, 0.3));
  await expect.element(page.getByRole('button', { name: 'Remove' })).toBeVisible();
  const pressed = [...screen.host.querySelectorAll('button, main a')];
  expect(pressed.length).toBeGreaterThan(6);
  for (const one of pressed) {
    expect(one.getBoundingClientRect().height, one.textContent ?? '').toBeGreaterThanOrEqual(48);
  }
});
