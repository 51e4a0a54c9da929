import { signal } from '@preact/signals';
import { afterEach, expect, test } from 'vitest';
import type { SoftBlend } from '../../../../app/core/raster/paint-slots.ts';
import { studyEdges, useSoft } from '../../../../app/ui/picture/use-soft.ts';
import { runHook } from '../../../support/ui/run-hook.ts';

const hooks: { leave(): void }[] = [];
afterEach(() => {
  for (const hook of hooks.splice(0)) hook.leave();
});
const settled = () => new Promise<void>((done) => setImmediate(done));
const size = { width: 2, height: 1 };
const blendOf = (n: number): SoftBlend => ({
  ...{ pixels: Uint32Array.of(n), partners: Uint8Array.of(0), shares: Uint8Array.of(1) },
});

function made() {
  const asked: {
    signal: AbortSignal;
    with: unknown[];
    answer: (blend: SoftBlend) => void;
    fail: () => void;
  }[] = [];
  const calls = {
    softBlend: (signal: AbortSignal, ...given: unknown[]) =>
      new Promise<SoftBlend>((answer, reject) => {
        asked.push({ signal, with: given, answer, fail: () => reject(new Error('no')) });
      }),
  } as never;
  let picture: Parameters<typeof useSoft>[1] = null;
  const hook = runHook(() => useSoft(calls, picture));
  hooks.push(hook);
  const show = async (next: typeof picture): Promise<void> => {
    picture = next;
    hook.again();
    await settled();
  };
  return { asked, hook, show };
}

test('nothing is asked without a picture; its blend is there as soon as it is worked out', async () => {
  const { asked, hook, show } = made();
  expect([asked.length, hook.current]).toEqual([0, null]);
  const picture = { slotMap: new Uint8Array(2), size, edges: [] };
  await show(picture);
  expect(asked.map((each) => each.with)).toEqual([[picture.slotMap, size, picture.edges]]);
  expect(hook.current).toBeNull();
  const blend = blendOf(1);
  asked[0]?.answer(blend);
  await settled();
  hook.again();
  expect(hook.current).toBe(blend);
  await show(picture);
  expect(asked).toHaveLength(1); // the same picture is not asked for again
});

test('while its edges are worked out anew the ones before are shown, of another picture none', async () => {
  const { asked, hook, show } = made();
  const slotMap = new Uint8Array(2);
  await show({ slotMap, size, edges: [] });
  const first = blendOf(1);
  asked[0]?.answer(first);
  await settled();
  await show({ slotMap, size, edges: [{} as never] });
  expect([hook.current, asked.length, asked[0]?.signal.aborted]).toEqual([first, 2, true]);
  await show({ slotMap: new Uint8Array(2), size, edges: [] });
  expect(hook.current).toBeNull();
});

test('where it cannot be worked out edges stay crisp; who leaves calls it off', async () => {
  const { asked, hook, show } = made();
  await show({ slotMap: new Uint8Array(2), size, edges: [] });
  asked[0]?.fail();
  await settled();
  expect(hook.current).toBeNull();
  hook.leave();
  await settled();
  expect(asked[0]?.signal.aborted).toBe(true);
});

test('before a picture is read, or a painting open, there are no edges', () => {
  const painting = signal({ decisions: [] });
  expect(studyEdges({ painting, seen: signal(null) } as never)).toEqual([]);
  expect(studyEdges({ painting: signal(null), seen: signal({}) } as never)).toEqual([]);
});
