import { expect, test } from 'vitest';
import { page } from 'vitest/browser';
import { RecordScreen } from '../../../app/screens/record/record-screen.tsx';
import { photoSample } from '../../support/storage/kept-samples.ts';
import { casePhoto } from '../support/case-photo.ts';
import { madeEasel } from './made-easel.ts';
import { shown } from './shown.ts';

test('the record: how it dried, what happened, the history, and paint it again', async () => {
  await page.viewport(390, 844);
  const made = await madeEasel();
  made.goTo('dry');
  made.wait(4);
  made.easel.shineGone();
  const key = made.easel.step.value?.key ?? '';
  made.easel.tell({ kind: 'trouble', key, trouble: 'muddy', wetness: 'damp' });
  made.easel.tell({ kind: 'note', text: 'Less green next time.' });
  const photo = await casePhoto('exif-orient-6.jpg');
  const bytes = await photo.arrayBuffer();
  const { sessionId } = made.easel.desk.value ?? { sessionId: '' };
  await made.store.keepRecordPhoto(sessionId, { ...photoSample('sheet'), bytes }, key);
  made.easel.tell({ kind: 'photo', photoId: 'sheet', key });
  const [changed] = made.easel.record.value?.mixes ?? [];
  if (!changed) throw new Error('The plan has no mix.');
  made.easel.tell({ kind: 'mix-changed', mix: changed.id, parts: changed.parts, load: 2 });
  made.wait(56);
  const screen = shown(
    <RecordScreen easel={made.easel} keepsakes={made.store} paintingId="made" />,
  );
  await expect.element(page.getByRole('link', { name: 'Back to the easel' })).toBeVisible();
  while (made.easel.running.value) {
    made.wait(0.1);
    made.easel.goOn();
  }
  await expect.element(page.getByRole('link', { name: 'Paint it again' })).toBeVisible();
  const region = (name: string) =>
    page.getByRole('heading', { name }).element().parentElement as HTMLElement;
  expect(region('How it dried').innerText).toMatch(
    /4 min[\s\S]*reckoned[\s\S]*60 min[\s\S]*reckoned/,
  );
  expect(region('What happened').innerText).toMatch(/It turns to mud[\s\S]*Less green next time/);
  const picture = page.getByRole('button', { name: /^Large: photo at / });
  await expect.poll(() => picture.element().querySelector('img')?.naturalWidth).toBeGreaterThan(0);
  const small = picture.element().clientWidth;
  await picture.click();
  await expect.poll(() => picture.element().clientWidth).toBeGreaterThan(1.5 * small);
  const title = made.easel.desk.value?.plan.steps.find((each) => each.key === key)?.title ?? '?';
  expect(region('Photos').innerText).toContain(title);
  expect(region('Mixes').innerText).toContain('as you changed it');
  await expect
    .poll(() => region('Reckoned and real, all paintings').innerText)
    .toMatch(/\d of \d+ lay in the range/);
  const address = picture.element().querySelector('img')?.src ?? '';
  await made.paintAgain();
  expect(made.easel.record.value?.changedMixes).toContain(changed.id); // carried over
  screen.leave();
  const lasts = () =>
    fetch(address).then(
      () => true,
      () => false,
    );
  await expect.poll(lasts).toBe(false); // let go of: the browser may take a moment
  made.easel.leave();
  made.store.close();
});
