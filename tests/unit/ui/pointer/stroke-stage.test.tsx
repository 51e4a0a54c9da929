import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Point } from '../../../../app/core/colour/lab.ts';
import { startShape, strokeOfShape } from '../../../../app/ui/picture/loose-shape.ts';
import { isSlip, StrokeStage } from '../../../../app/ui/pointer/stroke-stage.tsx';
import { type BareElement, drawBare } from '../../../support/ui/bare-page.ts';

// The stage made here is 100 x 100 px, its picture 400 x 300. A stroke is followed a tenth beyond its sides; one less
// than 0.03 across is a slip (own).
let strokes: (readonly Point[])[];
let drawn: ReturnType<typeof drawBare>;
let stage: BareElement;

function open(brushPx: number): void {
  drawn = drawBare(
    <StrokeStage
      label="Draw round it."
      brushPx={brushPx}
      size={{ width: 400, height: 300 }}
      hintId="hint"
      onStroke={(path) => strokes.push(path)}
    />,
  );
  [stage] = drawn.body.all('div') as [BareElement];
}
beforeEach(() => {
  strokes = [];
  open(0);
});
afterEach(() => drawn.leave());

const finger = (kind: string, clientX: number, clientY: number, pointerId = 1): Event =>
  stage.tell(kind, { ...{ pointerId, pointerType: 'touch', button: 0 }, clientX, clientY });
const key = (name: string, more: object = {}): boolean =>
  stage.tell('keydown', { key: name, shiftKey: false, ...more }).defaultPrevented;
/** What is drawn over the picture. */
async function lines(): Promise<string[]> {
  await drawn.settled();
  return drawn.body.all('path').map((path) => path.getAttribute('d') ?? '');
}

test('a finger draws a line in black on white where it goes, and the stroke is told when it leaves', async () => {
  expect(await lines()).toEqual([]);
  expect(finger('pointerdown', 10, 20).defaultPrevented).toBe(true);
  finger('pointermove', 50, 20);
  finger('pointermove', 150, -40); // held a tenth beyond the picture
  expect(await lines()).toEqual(Array(2).fill('M40.0 60.0L200.0 60.0L440.0 -30.0'));
  finger('pointerup', 50, 50);
  expect(strokes).toEqual([
    [
      [0.1, 0.2],
      [0.5, 0.2],
      [1.1, -0.1],
    ],
  ]);
  expect(await lines()).toEqual([]);
});

test('a second finger, or the browser, takes the stroke away', async () => {
  finger('pointerdown', 10, 20);
  finger('pointerdown', 60, 60, 2);
  expect(await lines()).toEqual([]);
  finger('pointermove', 50, 20);
  finger('pointerup', 50, 20);
  finger('pointerdown', 10, 20);
  finger('pointercancel', 10, 20);
  finger('pointerup', 10, 20);
  expect(strokes).toEqual([]);
});

test('by keys an oval is shown, moved and laid; it is gone when the stage is left', async () => {
  expect(key('ArrowRight')).toBe(true); // the first press only shows it
  const shown = await lines();
  expect(shown[0]).toMatch(/Z$/);
  key('ArrowRight');
  expect((await lines())[0]).not.toBe(shown[0]);
  expect(key('Enter')).toBe(true);
  expect(strokes[0]).not.toEqual(strokeOfShape(startShape));
  expect(await lines()).toEqual([]);
  expect(key(' ')).toBe(true);
  expect(strokes[1]).toEqual(strokeOfShape(startShape));
  key('ArrowLeft');
  stage.tell('blur');
  expect(await lines()).toEqual([]);
  expect([key('q'), key('Enter', { ctrlKey: true }), key('ArrowUp', { altKey: true })]).toEqual([
    ...[false, false, false],
  ]);
  expect(strokes).toHaveLength(2);
});

test('a brush is as wide as it is, and a dab by keys stays where it is for the next', async () => {
  drawn.leave();
  open(24);
  key('ArrowRight');
  const [dab] = drawn.body.all('path');
  await drawn.settled();
  const d = (await lines())[0];
  expect(d).toMatch(/^M200\.0 150\.0l0 0$/);
  expect((dab ?? drawn.body.all('path')[0])?.getAttribute('stroke-width')).toBe('24');
  key('Enter');
  expect(strokes).toEqual([[startShape.centre]]);
  expect((await lines())[0]).toBe(d);
});

test('a line that is hardly a shape was a slip of the finger', () => {
  const box = (wide: number, high: number): Point[] => [
    [0.2, 0.3],
    [0.2 + wide, 0.3],
    [0.2 + wide, 0.3 + high],
  ];
  expect([isSlip(box(0.031, 0.031)), isSlip(box(0.029, 0.2)), isSlip(box(0.2, 0.029))]).toEqual([
    ...[false, true, true],
  ]);
});
