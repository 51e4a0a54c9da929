import { effect, type ReadonlySignal } from '@preact/signals';
import type { Route } from './router.ts';

/** What a shortcut of the installed app asks for (manifest.webmanifest). */
const goOnHash = '#/go-on';
const placeName = 'firstwash easel';

interface LaunchNeeds {
  readonly window: Window;
  readonly route: ReadonlySignal<Route>;
  /** Goes on where the last painting was left, or to the first screen. */
  readonly goOn: () => void;
}

/**
 * Started by a shortcut, or once more while a window is open: the manifest lets the open window go to the start, as
 * photos that are shared would be lost otherwise (WICG web-app-launch, issue 62). A session is not pushed off the
 * screen by that: this window comes back to its easel.
 */
export function takeLaunches({ window, route, goOn }: LaunchNeeds): void {
  const { location } = window;
  const look = (): void => {
    if (location.hash === goOnHash) goOn();
  };
  try {
    const { sessionStorage } = window;
    const left = sessionStorage.getItem(placeName);
    if (location.hash === '' && left?.startsWith('#/painting/')) location.replace(left);
    effect(() => {
      const easel = route.value.screen === 'easel';
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
