import { afterEach, beforeEach, expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { EaselClock } from '../../../app/screens/easel/easel-clock.tsx';
import { PacePanel } from '../../../app/screens/easel/practise-panel.tsx';
import { MixPanel, NotePanel, PhotoPanel } from '../../../app/screens/easel/record-panels.tsx';
import { TroublePanel } from '../../../app/screens/easel/trouble-panel.tsx';
import { MeanwhileList } from '../../../app/screens/easel/wait-panel.tsx';
import { WeatherPanel } from '../../../app/screens/easel/weather-panel.tsx';
import { StorageProblem } from '../../../app/storage/storage-problem.ts';
import { photoSample } from '../../support/storage/kept-samples.ts';
import { casePhoto } from '../support/case-photo.ts';
import { type MadeEasel, madeEasel } from './made-easel.ts';
import { type Shown, shown } from './shown.ts';

const photoName = 'exif-orient-6.jpg';
let made: MadeEasel;
let screen: Shown | null = null;

function Panels({ easel, store }: Pick<MadeEasel, 'easel' | 'store'>) {
  const { value: desk } = easel.desk;
  const { value: step } = easel.step;
  return (
    <div>
      {step && <EaselClock easel={easel} step={step} />}
      {desk && <MeanwhileList easel={easel} desk={desk} onEdges={() => {}} />}
      <TroublePanel easel={easel} />
      <WeatherPanel easel={easel} />
      <PacePanel easel={easel} />
      <MixPanel easel={easel} />
      {desk && <PhotoPanel {...{ easel, keepsakes: store, sessionId: desk.sessionId }} />}
      {desk && <NotePanel {...{ easel, keepsakes: store, sessionId: desk.sessionId }} />}
    </div>
  );
}

const show = (): void => {
  screen?.leave();
  screen = shown(<Panels {...made} />);
};
const button = (name: string | RegExp) =>
  page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });
const open = (title: string): void => {
  const folds = [...document.querySelectorAll('details[name=more]')] as HTMLDetailsElement[];
  const fold = folds.find((each) => each.querySelector('h3')?.innerText === title);
  if (!fold) throw new Error(`There is no '${title}'.`);
  fold.open = true;
};

beforeEach(async () => {
  await page.viewport(390, 844);
  made = await madeEasel();
});
afterEach(() => {
  screen?.leave();
  screen = null;
  made.easel.leave();
  made.store.close();
});

test('a trouble gets the remedy for the wet the sheet has now, and stands in the record', async () => {
  made.goTo('dry');
  show();
  await expect.element(button('Shiny')).toHaveAttribute('aria-pressed', 'true');
  made.easel.shineGone();
  await expect.element(button('Dull, cool')).toHaveAttribute('aria-pressed', 'true');
  await button('A bloom ran back').click();
  await expect.element(page.getByTestId('remedy')).toHaveTextContent(/^Leave it until it is bone/);
  await button('Bone dry').click(); // she knows better: the remedy follows, and the record
  await expect.element(page.getByTestId('remedy')).not.toHaveTextContent(/^Leave it until it is/);
  await button('Something else').click();
  await button('A hard edge dried in').click();
  await expect.element(page.getByTestId('remedy')).toHaveTextContent(/Wet only the edge/);
  expect(made.easel.record.value?.troubles).toMatchObject([
    { trouble: 'backrun', wetness: 'bone dry' },
    { trouble: 'hard edge', wetness: 'bone dry' },
  ]);
});

test('while it dries: the puddles to mix next, the edges to come', async () => {
  made.goTo('dry');
  show();
  const list = page.getByTestId('meanwhile');
  await expect.element(list).toHaveTextContent(/Mix the puddles for: /);
  await expect.element(list).toHaveTextContent(/Nothing else can be painted|Paint elsewhere/);
  await expect.element(button('Look at the edges to come')).toBeVisible();
});

test('mixed otherwise: a part less and a stronger puddle stand in the record', async () => {
  made.goTo('wash');
  show();
  open('Change the mix');
  const [before] = made.easel.record.value?.mixes ?? [];
  await button('Stronger').first().click();
  await button(/^Less /)
    .first()
    .click();
  const [after] = made.easel.record.value?.mixes ?? [];
  expect(after?.load).toBeCloseTo((before?.load ?? 0) * Math.SQRT2, 6);
  expect(after?.parts[0]?.parts).toBe((before?.parts[0]?.parts ?? 0) - 1);
  expect(made.easel.record.value?.changedMixes).toContain(before?.id);
});

test('other air moves the clock at once, is kept, and begins the next session', async () => {
  made.goTo('dry');
  show();
  open('Air and paper');
  const before = made.easel.session.value.timer?.endsHighMs ?? 0;
  await button('Fog').click();
  expect(made.easel.session.value.timer?.endsHighMs).toBeGreaterThan(2 * before);
  await expect
    .element(page.getByRole('status').first())
    .toHaveTextContent(/hours.*back of the hand/);
  await page.getByTestId('clock').getByRole('button').click();
  await expect.element(page.getByTestId('clock')).toHaveTextContent(/pale as a dry scrap/);
  await button('640 g/m²').click();
  await made.store.settled();
  await made.paintAgain();
  expect(made.easel.session.value).toMatchObject({
    weather: { humidity: 92 },
    paper: { gsm: 640, fibre: 'cotton' },
  });
});

test('exact figures with a comma count; a figure out of reach is refused with its bounds', async () => {
  show();
  open('Air and paper');
  await page.getByText('Exact figures').click();
  const field = page.getByLabelText('Degrees Celsius');
  await field.fill('21,5');
  (field.element() as HTMLInputElement).blur();
  await expect.poll(() => made.easel.session.value.weather.celsius).toBe(21.5);
  await field.fill('80');
  (field.element() as HTMLInputElement).blur();
  await expect.element(page.getByRole('alert')).toHaveTextContent('a figure from 1 to 50');
  expect(made.easel.session.value.weather.celsius).toBe(21.5);
  await expect.element(field).toHaveValue('21.5');
});

test('a scrap: brush down, shine gone, and her pace is learned and can be forgotten', async () => {
  show();
  open('Practise on a scrap');
  await button('Take a scrap').click();
  await button('Brush down').click();
  made.wait(2.5);
  await button('Shine gone on the scrap').click();
  await expect.element(page.getByText(/The shine went in 2:30/)).toBeVisible();
  open('Your drying pace');
  await expect.element(page.getByText(/lose their shine .* from 1 tap\./)).toBeVisible();
  await button(/^Forget/).click();
  await expect.element(page.getByText(/Nothing learned yet/)).toBeVisible();
  await expect.poll(() => made.store.saving.value).toBe('saved');
});

test('a note being typed comes back with the page; once kept it stands in the record alone', async () => {
  const field = page.getByRole('textbox', { name: 'Note for the record' });
  const sessionId = made.easel.desk.value?.sessionId;
  show();
  open('Note');
  await field.fill('Granulates well.');
  await made.store.settled();
  show(); // as after a reload: nothing is left but what was kept
  open('Note');
  await expect.element(field).toHaveValue('Granulates well.');
  await button('Keep the note').click();
  expect(made.easel.record.value?.notes).toMatchObject([{ text: 'Granulates well.' }]);
  await expect.element(page.getByText('It stands in the record.')).toBeVisible();
  await expect.poll(() => made.store.setting(`note draft ${sessionId}`)).toBeNull();
  show();
  open('Note');
  await expect.element(button('Keep the note')).toBeDisabled();
});

const photoInput = (): HTMLInputElement => {
  const found = document.querySelector<HTMLInputElement>('input[type=file][capture]');
  if (!found) throw new Error('There is no way in for a photo.');
  return found;
};
const choose = (blob: Blob): void => {
  const files = new DataTransfer();
  files.items.add(new File([blob], 'sheet.jpg'));
  photoInput().files = files.files;
  photoInput().dispatchEvent(new Event('change', { bubbles: true }));
};

test('a photo for the record is kept byte for byte; what is no photo gets its sentence', async () => {
  made.goTo('dry');
  const key = made.easel.step.value?.key;
  show();
  open('Photo for the record');
  choose(new Blob(['no picture']));
  await expect.element(page.getByRole('alert')).toHaveTextContent(/^This file is not a picture/);
  const blob = await casePhoto(photoName);
  choose(blob);
  await expect.element(page.getByText('It stands in the record.')).toBeVisible();
  const photos = made.easel.record.value?.photos ?? [];
  expect(photos).toMatchObject([{ stepKey: key }]);
  const kept = await made.store.photo(photos[0]?.photoId ?? '');
  expect(new Uint8Array(kept?.bytes ?? new ArrayBuffer(0))).toEqual(
    new Uint8Array(await blob.arrayBuffer()),
  );
  made.easel.takeBack();
  await expect.element(page.getByText('It stands in the record.')).not.toBeInTheDocument();
  for (const label of document.querySelectorAll('label:has(input[type=file])'))
    expect(label.getBoundingClientRect().height).toBeGreaterThanOrEqual(64);
});

test('no room for a photo: it is said, and nothing stands in the record', async () => {
  const full = { keepRecordPhoto: () => Promise.reject(new StorageProblem('no-room')) };
  screen = shown(<Panels easel={made.easel} store={{ ...made.store, ...full }} />);
  open('Photo for the record');
  choose(await casePhoto(photoName));
  await expect.element(page.getByRole('alert')).toHaveTextContent(/^Not saved: .*too little room/);
  expect(made.easel.record.value?.photos).toEqual([]);
});

test('a photo whose window was closed before its line is given it when the sheet is opened', async () => {
  const sessionId = made.easel.desk.value?.sessionId ?? '';
  await made.store.keepRecordPhoto(sessionId, photoSample('late'), 'wash');
  show();
  const ids = () => made.easel.record.value?.photos.map(({ photoId }) => photoId);
  await expect.poll(ids).toEqual(['late']);
  show();
  await made.store.lastRecordPhoto(sessionId);
  await made.store.settled();
  expect(ids()).toEqual(['late']);
});

test('painted again: it starts from what was learned', async () => {
  made.goTo('dry');
  const reckoned = made.easel.session.value.timer?.reckoned.dryMinutes ?? [0, 0];
  made.wait(reckoned[1] * 1.5);
  await made.paintAgain();
  made.goTo('dry');
  const again = made.easel.session.value.timer?.reckoned.dryMinutes ?? [0, 0];
  expect(again[1]).toBeGreaterThan(reckoned[1] * 1.05);
});
