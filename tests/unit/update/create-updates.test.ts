import { signal } from '@preact/signals';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { createUpdates } from '../../../app/update/create-updates.ts';

// The browser's part is played by plain EventTargets; tests/e2e/update.spec.ts has the real one.

class StandInWorker extends EventTarget {
  state = 'installed';
  readonly messages: unknown[] = [];
  postMessage(message: unknown): void {
    this.messages.push(message);
  }
}

class StandInRegistration extends EventTarget {
  active: StandInWorker | null = new StandInWorker();
  waiting: StandInWorker | null = new StandInWorker();
  installing: StandInWorker | null = null;
  looks = 0;
  async update(): Promise<void> {
    this.looks++;
  }
}

class StandInContainer extends EventTarget {
  controller: object | null = {};
  readonly registration = new StandInRegistration();
  async register(): Promise<StandInRegistration> {
    return this.registration;
  }
}

const nextTask = () => new Promise((resolve) => setTimeout(resolve));

describe('updates by consent', () => {
  let container: StandInContainer;
  let page: EventTarget & { visibilityState: string };
  let reload: ReturnType<typeof vi.fn>;

  beforeEach(() => {
    container = new StandInContainer();
    page = Object.assign(new EventTarget(), { visibilityState: 'visible' });
    reload = vi.fn();
    vi.stubEnv('PROD', true);
    vi.stubGlobal('navigator', { serviceWorker: container });
    vi.stubGlobal('document', page);
    vi.stubGlobal('location', { reload });
  });

  afterEach(() => {
    vi.unstubAllEnvs();
    vi.unstubAllGlobals();
  });

  test('nothing is offered and nothing looked for while a session runs', async () => {
    const inSession = signal(true);
    const updates = createUpdates({ settled: async () => undefined, inSession });
    updates.start();
    await nextTask();
    page.dispatchEvent(new Event('visibilitychange'));
    await updates.accept();
    expect(updates.updateReady.value).toBe(false);
    expect(container.registration.looks).toBe(0);
    expect(container.registration.waiting?.messages).toEqual([]);
    inSession.value = false;
    expect(updates.updateReady.value).toBe(true);
    page.dispatchEvent(new Event('visibilitychange'));
    expect(container.registration.looks).toBe(1);
  });

  test('what is being written is finished first, and a session begun meanwhile goes before', async () => {
    const inSession = signal(false);
    let written = (): void => undefined;
    const settled = () =>
      new Promise<void>((done) => {
        written = done;
      });
    const updates = createUpdates({ settled, inSession });
    updates.start();
    await nextTask();
    const first = updates.accept();
    await nextTask();
    expect(container.registration.waiting?.messages).toEqual([]);
    inSession.value = true;
    written();
    await first;
    expect(container.registration.waiting?.messages).toEqual([]);
    inSession.value = false;
    const second = updates.accept();
    written();
    await second;
    expect(container.registration.waiting?.messages).toEqual([{ kind: 'take-over' }]);
    expect(reload).not.toHaveBeenCalled();
    container.dispatchEvent(new Event('controllerchange'));
    container.dispatchEvent(new Event('controllerchange'));
    expect(reload).toHaveBeenCalledTimes(1);
  });

  test('the first visit being taken under control is no update', async () => {
    container.controller = null;
    container.registration.active = null;
    container.registration.waiting = null;
    const updates = createUpdates({ settled: async () => undefined, inSession: signal(false) });
    updates.start();
    await nextTask();
    container.dispatchEvent(new Event('controllerchange'));
    expect(updates.updateReady.value).toBe(false);
    expect(reload).not.toHaveBeenCalled();
  });

  test('not taken while a session runs in another window, and that is said', async () => {
    let elsewhere = true;
    const updates = createUpdates({
      settled: async () => undefined,
      inSession: signal(false),
      inSessionAnywhere: async () => elsewhere,
    });
    updates.start();
    await nextTask();
    await updates.accept();
    expect(updates.waitsForWindow.value).toBe(true);
    expect(container.registration.waiting?.messages).toEqual([]);
    elsewhere = false;
    await updates.accept();
    expect(updates.waitsForWindow.value).toBe(false);
    expect(container.registration.waiting?.messages).toEqual([{ kind: 'take-over' }]);
  });

  // Three tries, as many as the test lets fail and then go well: (own).
  test('a first visit cut short goes on by itself, whether before or within the install', async () => {
    container.controller = null;
    const { registration } = container;
    registration.active = null;
    registration.waiting = null;
    const installing = new StandInWorker();
    const answers = [
      () => Promise.reject(new TypeError('no network')),
      async () => Object.assign(registration, { installing }),
      async () => {
        const active = Object.assign(new StandInWorker(), { state: 'activated' });
        const whole = Object.assign(new StandInRegistration(), { active, waiting: null });
        return whole;
      },
    ];
    let asked = 0;
    container.register = () => (answers[asked++] ?? answers[2])?.() as Promise<StandInRegistration>;
    const updates = createUpdates({
      settled: async () => undefined,
      inSession: signal(false),
      retryMs: 1,
    });
    updates.start();
    await expect.poll(() => asked).toBe(2);
    installing.state = 'redundant';
    installing.dispatchEvent(new Event('statechange'));
    await expect.poll(() => updates.offlineReady.value).toBe(true);
    expect(asked).toBe(3);
  });

  test('no service worker: quiet', () => {
    vi.stubGlobal('navigator', {});
    const updates = createUpdates({ settled: async () => undefined, inSession: signal(false) });
    updates.start();
    expect([updates.offlineReady.value, updates.updateReady.value]).toEqual([false, false]);
  });
});
