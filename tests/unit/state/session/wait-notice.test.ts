import { expect, test, vi } from 'vitest';
import { createWaitNotice } from '../../../../app/state/session/wait-notice.ts';

function device(answer: NotificationPermission, shows = true) {
  const close = vi.fn();
  const registration = {
    showNotification: vi.fn(async () => {
      if (!shows) throw new TypeError('No permission');
    }),
    getNotifications: vi.fn(async () => [{ close }]),
  };
  const Notification = {
    permission: 'default' as NotificationPermission,
    requestPermission: vi.fn(async () => {
      Notification.permission = answer;
      return answer;
    }),
  };
  const document = Object.assign(new EventTarget(), { visibilityState: 'visible' });
  const serviceWorker = { getRegistration: async () => registration };
  const window = { Notification, navigator: { serviceWorker }, document };
  const see = (visibilityState: 'visible' | 'hidden'): void => {
    document.visibilityState = visibilityState;
    document.dispatchEvent(new Event('visibilitychange'));
  };
  return { notice: createWaitNotice(window as never), registration, Notification, see, close };
}
const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

test('nothing is asked before she taps; then her answer counts', async () => {
  const { notice, Notification, registration, see } = device('granted');
  see('hidden');
  await notice.show('Firstwash', 'Look at the sheet.');
  expect(Notification.requestPermission).not.toHaveBeenCalled();
  expect(registration.showNotification).not.toHaveBeenCalled();
  await notice.ask();
  expect(notice.state.value).toBe('granted');
});

test('shown while she does not see the page, and taken away when she is back', async () => {
  const { notice, registration, see, close } = device('granted');
  await notice.ask();
  await notice.show('Firstwash', 'Look at the sheet.');
  expect(registration.showNotification).not.toHaveBeenCalled();
  see('hidden');
  await notice.show('Firstwash', 'Look at the sheet.');
  expect(registration.showNotification).toHaveBeenCalledExactlyOnceWith(
    'Firstwash',
    expect.objectContaining({ body: 'Look at the sheet.', tag: 'firstwash wait' }),
  );
  see('visible');
  await settled();
  expect(close).toHaveBeenCalledOnce();
});

test('refused, taken back in the settings, and failing: each is known', async () => {
  const refused = device('denied');
  await refused.notice.ask();
  expect(refused.notice.state.value).toBe('denied');

  const taken = device('granted');
  await taken.notice.ask();
  taken.Notification.permission = 'denied';
  taken.see('visible');
  expect(taken.notice.state.value).toBe('denied');

  const failing = device('granted', false);
  await failing.notice.ask();
  failing.see('hidden');
  await failing.notice.show('Firstwash', 'Look.');
  expect(failing.notice.state.value).toBe('failed');
});

test('a browser without notices says so', () => {
  const document = Object.assign(new EventTarget(), { visibilityState: 'visible' });
  expect(createWaitNotice({ navigator: {}, document } as never).state.value).toBe('missing');
});
