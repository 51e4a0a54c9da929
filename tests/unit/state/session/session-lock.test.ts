import { describe, expect, test, vi } from 'vitest';
import { createSessionLock, onlyWindow } from '../../../../app/state/session/session-lock.ts';

/** Windows of one browser: its locks and messages, after the Web Locks API (W3C), as far as they are used here. */
function browser() {
  interface Asked {
    readonly run: (lock: object | null) => unknown;
    readonly reject: (reason: Error) => void;
  }
  const held = new Map<string, Asked>();
  const waiting = new Map<string, Asked[]>();
  const channels: {
    onmessage: ((message: MessageEvent) => void) | null;
    postMessage(data: unknown): void;
  }[] = [];

  function grant(name: string, asked: Asked): void {
    held.set(name, asked);
    void Promise.resolve(asked.run({})).then(() => {
      if (held.get(name) !== asked) return;
      held.delete(name);
      const next = waiting.get(name)?.shift();
      if (next) grant(name, next);
    });
  }
  const request = (name: string, options: LockOptions, run: Asked['run']): Promise<void> =>
    new Promise((_, reject) => {
      const asked: Asked = { run, reject };
      const holder = held.get(name);
      if (options.steal && holder) {
        held.delete(name);
        holder.reject(new DOMException('taken', 'AbortError'));
      }
      if (!held.has(name)) grant(name, asked);
      else if (options.ifAvailable) run(null);
      else {
        const queue = waiting.get(name) ?? [];
        waiting.set(name, [...queue, asked]);
        options.signal?.addEventListener('abort', () => {
          waiting.set(
            name,
            (waiting.get(name) ?? []).filter((each) => each !== asked),
          );
          reject(options.signal?.reason);
        });
      }
    });

  return {
    open() {
      const channel: (typeof channels)[number] = {
        onmessage: null,
        postMessage(data) {
          for (const other of channels)
            if (other !== channel) other.onmessage?.({ data } as MessageEvent);
        },
      };
      channels.push(channel);
      const onNews = vi.fn();
      const lock = createSessionLock({ locks: { request } as never, channel, onNews });
      return { lock, onNews };
    },
  };
}

const settled = () => new Promise((done) => setImmediate(done));

describe('of two windows', () => {
  test('the one that asks first is in charge, the other follows until it is let go', async () => {
    const { open } = browser();
    const [one, other] = [open(), open()];
    one.lock.ask('s');
    other.lock.ask('s');
    await settled();
    expect([one.lock.inCharge.value, other.lock.inCharge.value]).toEqual([true, false]);
    expect(other.onNews).not.toHaveBeenCalled();
    one.lock.release();
    await settled();
    expect(other.lock.inCharge.value).toBe(true);
    expect(other.onNews).toHaveBeenCalledTimes(1); // what the first kept meanwhile
    expect(one.onNews).not.toHaveBeenCalled();
  });

  test('the other may take over; the first follows then, and may take it back', async () => {
    const { open } = browser();
    const [one, other] = [open(), open()];
    one.lock.ask('s');
    await settled();
    other.lock.ask('s');
    await settled();
    one.lock.takeOver(); // in charge already
    other.lock.takeOver();
    await settled();
    expect([one.lock.inCharge.value, other.lock.inCharge.value]).toEqual([false, true]);
    one.lock.takeOver();
    await settled();
    expect([one.lock.inCharge.value, other.lock.inCharge.value]).toEqual([true, false]);
  });

  test('who follows hears what is kept of that session; who is in charge does not need to', async () => {
    const { open } = browser();
    const [one, other, elsewhere] = [open(), open(), open()];
    one.lock.kept(); // nothing asked for yet: nobody is told
    one.lock.ask('s');
    other.lock.ask('s');
    elsewhere.lock.ask('t');
    await settled();
    one.lock.kept();
    expect(other.onNews).toHaveBeenCalledTimes(1);
    expect(elsewhere.onNews).not.toHaveBeenCalled();
    other.lock.kept();
    expect(one.onNews).not.toHaveBeenCalled();
  });

  test('one that left while it waited is not given it', async () => {
    const { open } = browser();
    const [one, other, third] = [open(), open(), open()];
    one.lock.ask('s');
    other.lock.ask('s');
    third.lock.ask('s');
    await settled();
    other.lock.release();
    one.lock.release();
    await settled();
    expect(third.lock.inCharge.value).toBe(true);
    expect(other.onNews).not.toHaveBeenCalled();
  });
});

test('asked for twice it is held once; another session lets the first go', async () => {
  const { open } = browser();
  const [one, other] = [open(), open()];
  one.lock.ask('s');
  one.lock.ask('s');
  await settled();
  other.lock.ask('s');
  await settled();
  expect(other.lock.inCharge.value).toBe(false);
  one.lock.ask('t');
  await settled();
  expect([one.lock.inCharge.value, other.lock.inCharge.value]).toEqual([true, true]);
});

test('where a browser can not tell, every window is in charge', () => {
  onlyWindow.ask('s');
  onlyWindow.takeOver();
  onlyWindow.kept();
  expect(onlyWindow.inCharge.value).toBe(true);
  onlyWindow.release();
});
