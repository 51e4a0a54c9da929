import { expect, test } from 'vitest';
import { paintBox } from '../../../../../app/core/paint/paint-box.ts';
import { noCheckpoint } from '../../../../../app/core/palette/checkpoint.ts';
import { buildPlan } from '../../../../../app/core/plan/build-plan.ts';
import { describeBrokenRules } from '../../../../../app/core/plan/rules/check-rules.ts';
import type { SubjectStroke } from '../../../../../app/core/reading/subject/subject.ts';
import { opened, painted, readFor } from '../../../../support/reading/rasters.ts';
import { sound } from '../../../../support/reading/sound-reading.ts';

const [width, height] = [400, 300];
const inBox = (x: number, y: number): boolean => x >= 120 && x < 280 && y >= 80 && y < 220;

/** A box, its upper half pale, its lower half like the ground to the right; ground pale left, dark right. */
const picture = () =>
  painted(width, height, (x, y) => {
    if (inBox(x, y)) return y < 150 ? [230, 225, 215] : [60, 62, 66];
    return x < 200 ? [150, 152, 150] : [60, 62, 66];
  });

const box = (gap: number): SubjectStroke => ({
  mode: 'circle',
  brush: 0,
  path: [
    [120 - gap, 80 - gap],
    [280 + gap, 80 - gap],
    [280 + gap, 220 + gap],
    [120 - gap, 220 + gap],
  ].map(([x = 0, y = 0]) => [x / width, y / height] as const),
});

/** Read once each, not to be written into. */
const whole = readFor(picture());
const parted = readFor(picture(), { subject: [box(6)] });

// Limits and figures are (own): the docstrings of what is tested say why.
test('without a subject the sheet is one passage', async () => {
  const { reading } = await whole;
  expect(new Set(reading.slots.map(({ passage }) => passage))).toEqual(new Set(['sheet']));
  expect(reading.subject).toBeNull();
});

test('with one, every pixel lies in its own passage, in bands and families of the whole picture', async () => {
  const read = await parted;
  sound(read);
  const { reading, slotMap } = read;
  expect(reading.slots.map(({ passage }) => passage)).toEqual(
    [...reading.slots.map(({ passage }) => passage)].sort(),
  );
  const limits = ({ reading: one }: typeof read) => one.bands.map(({ from, to }) => [from, to]);
  expect(limits(read)).toEqual(limits(await whole));
  expect(reading.families.map(({ name }) => name)).toEqual(
    (await whole).reading.families.map(({ name }) => name),
  );
  let wrong = 0;
  for (let i = 0; i < slotMap.length; i++) {
    const own = reading.slots[slotMap[i] as number]?.passage;
    const known = inBox(i % width, Math.floor(i / width)) ? 'subject' : 'ground';
    if (own !== known) wrong++;
  }
  expect(wrong / slotMap.length).toBeLessThan(0.02);
  // The dark runs from subject to ground without a border in value: still two shapes.
  const dark = reading.slots.filter(({ band }) => band === reading.bands.length);
  expect(new Set(dark.map(({ passage }) => passage))).toEqual(new Set(['ground', 'subject']));
});

test('says where the subject stands out and where it is lost', async () => {
  const { reading } = await parted;
  const { subject } = reading;
  if (!subject) throw new Error('no subject');
  expect(Math.abs((subject.share * width * height) / (160 * 140) - 1)).toBeLessThan(0.05);
  expect(subject.meanLightness.subject).toBeGreaterThan(subject.meanLightness.ground);
  const mm = 381 / width;
  const length = subject.line.reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  expect(Math.abs(length / (600 * mm) - 1)).toBeLessThan(0.06);
  // Lost: lower right, 80 px along the bottom and 70 up the side, of 600.
  expect(subject.lostShare).toBeGreaterThan(0.2);
  expect(subject.lostShare).toBeLessThan(0.3);
  expect(subject.standsOutShare).toBeGreaterThan(0.68);
  for (const { path, contrast } of subject.line) {
    const [x, y] = path[path.length >> 1] as readonly [number, number];
    if (Math.abs(contrast) < 4) expect(x > 0.49 && y > 0.48).toBe(true);
    else if (contrast < 0)
      expect(x < 0.51 && y > 0.48).toBe(true); // dark against the pale left
    else expect(y).toBeLessThan(0.52);
  }
});

/** Seven paints: what is searched does not matter here. */
const someOfTheBox = paintBox.filter((_, n) => n % 17 === 0).map(({ id }) => id);

test('the plan of a photograph in passages obeys the rules', async () => {
  const photo = await opened('app/demo/seed-heads.jpg', 400);
  const path = Array.from({ length: 40 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 40;
    return [0.23 + 0.24 * Math.cos(angle), 0.34 + 0.32 * Math.sin(angle)] as const;
  });
  const read = await readFor(photo, { subject: [{ mode: 'circle', path, brush: 0 }] });
  sound(read);
  const plan = await buildPlan(read.reading, { box: someOfTheBox }, noCheckpoint);
  expect(describeBrokenRules(plan, { washes: 3, puddlesPerWash: 3 })).toEqual([]);
  const keys = plan.steps.filter(({ kind }) => kind === 'wash').map(({ key }) => key);
  expect(new Set(keys.map((key) => key.split('/')[1]))).toEqual(new Set(['ground', 'subject']));
});

test('the picture is read as before where she circled nothing of it', async () => {
  const off: SubjectStroke = {
    mode: 'circle',
    brush: 0,
    path: [
      [1.2, 1.2],
      [1.6, 1.2],
      [1.6, 1.6],
    ],
  };
  expect(await readFor(picture(), { subject: [off] })).toEqual(await whole);
});

test.each([
  [[{ ...box(6), mode: 'add' as const }]],
  [[box(6), box(8)]],
  [[{ ...box(6), brush: Number.NaN }]],
  [[{ ...box(6), path: [] }]],
])('strokes that mean nothing are refused: %#', async (subject) => {
  await expect(readFor(picture(), { subject })).rejects.toThrow(RangeError);
});
