import { effect } from '@preact/signals';
import type { PaintingCard, Shelf } from './painting/shelf.ts';
import type { Router } from './router.ts';

/** What a shortcut of the installed app asks for (manifest.webmanifest). */
const goOnHash = '#/go-on';
const placeName = 'firstwash easel';

interface LaunchNeeds {
  readonly window: Window;
  readonly router: Pick<Router, 'route' | 'replace'>;
  readonly shelf: Pick<Shelf, 'refresh' | 'last'>;
  /** Goes on where a painting was left. */
  readonly goOn: (painting: PaintingCard) => void;
}

/**
 * Started by a shortcut, or once more while a window is open: the manifest lets the open window go to the start, as
 * photos that are shared would be lost otherwise (WICG web-app-launch, issue 62). A session is not pushed off the
 * screen by that: the installed app's window comes back to its easel. In a tab of the browser an address she opens counts.
 */
export function takeLaunches({ window, router, shelf, goOn }: LaunchNeeds): void {
  const { location } = window;
  const goOnLast = async (): Promise<void> => {
    await shelf.refresh();
    router.replace({ screen: 'start' }); // the shortcut's own address is no place to come back to
    if (shelf.last.value) goOn(shelf.last.value);
  };
  const look = (): void => {
    if (location.hash === goOnHash) void goOnLast();
  };
  try {
    const { sessionStorage } = window;
    const left = sessionStorage.getItem(placeName);
    const installed = !window.matchMedia('(display-mode: browser)').matches;
    const atEasel = left?.startsWith('#/painting/') ? left : null;
    if (installed && location.hash === '' && atEasel) location.replace(atEasel);
    effect(() => {
      const easel = router.route.value.screen === 'easel';
      // Not yet where it was sent to: what is kept counts on.
      if (easel) sessionStorage.setItem(placeName, location.hash);
      else if (location.hash !== left) sessionStorage.removeItem(placeName);
    });
  } catch {
    // A browser that keeps nothing.
  }
  window.addEventListener('hashchange', look);
  look();
}
