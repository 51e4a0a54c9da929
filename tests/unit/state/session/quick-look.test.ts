import { expect, test, vi } from 'vitest';
import { createQuickLook, type QuickLookCalls } from '../../../../app/state/session/quick-look.ts';
import type { Pictures } from '../../../../workers/api.ts';

const bitmap = () => ({ close: vi.fn() }) as unknown as ImageBitmap;
const photo = new Blob(['photo']);

function looking(answers: Partial<QuickLookCalls> = {}) {
  const seen: Pictures = { reference: bitmap(), grey: bitmap() };
  const calls: QuickLookCalls = {
    openPhoto: async () => ({ width: 4, height: 3, preview: bitmap() }),
    pictures: async () => seen,
    ...answers,
  };
  return { seen, look: createQuickLook(calls, async () => new ArrayBuffer(1)) };
}

test('a photo of the sheet is shown, and let go of when she leaves', async () => {
  const { look, seen } = looking();
  const taking = look.take(photo);
  expect(look.working.value).toBe(true);
  await taking;
  expect(look.pictures.value).toBe(seen);
  expect(look.working.value).toBe(false);
  look.leave();
  expect(look.pictures.value).toBeNull();
  expect(seen.reference.close).toHaveBeenCalled();
  expect(seen.grey.close).toHaveBeenCalled();
});

test('a photo that can not be read is said in a sentence, and the next one works', async () => {
  const fault = Object.assign(new Error('This is no photo.'), { name: 'PhotoError' });
  let isBad = true;
  const { look, seen } = looking({
    openPhoto: async () => {
      if (isBad) throw fault;
      return { width: 4, height: 3, preview: bitmap() };
    },
  });
  await look.take(photo);
  expect(look.problem.value).toBe('This is no photo.');
  expect(look.working.value).toBe(false);
  isBad = false;
  await look.take(photo);
  expect(look.problem.value).toBeNull();
  expect(look.pictures.value).toBe(seen);
});

test('left while it is looked at, nothing is shown or held', async () => {
  let answer: (pictures: Pictures) => void = () => {};
  const { look, seen } = looking({
    pictures: () =>
      new Promise((resolve) => {
        answer = resolve;
      }),
  });
  const taking = look.take(photo);
  await vi.waitFor(() => expect(look.working.value).toBe(true));
  await new Promise((resolve) => setTimeout(resolve));
  look.leave();
  answer(seen);
  await taking;
  expect(look.pictures.value).toBeNull();
  expect(seen.grey.close).toHaveBeenCalled();
});
