import './styles/base.css';
import './styles/tokens.css';
import { signal } from '@preact/signals';
import { render } from 'preact';
import { App } from './screens/app.tsx';
import { createApp } from './state/create-app.ts';
import { describeFault } from './state/describe-fault.ts';
import { sessionAnywhere } from './state/session/session-lock.ts';
import { openStore } from './storage/open-store.ts';
import { StartTrouble } from './ui/layout/waiting.tsx';
import { createUpdates } from './update/create-updates.ts';

const root = document.getElementById('app');
if (!root) throw new TypeError('index.html has no element #app');

const say = (sentence: string): void => render(<StartTrouble sentence={sentence} />, root);

let shown = false;

try {
  // Once the app is shown it says such trouble itself: it must not push a session off the screen.
  const store = await openStore({
    onTrouble: (trouble) => trouble && !shown && say(trouble.message),
  });
  const app = createApp(store, window);
  shown = true;
  root.replaceChildren();
  render(<App app={app} />, root);
  app.updates.start();
} catch (fault) {
  // A newer version that waits may be the very one her paintings were saved by.
  const updates = createUpdates({
    settled: async () => {},
    inSession: signal(false),
    inSessionAnywhere: () => sessionAnywhere(navigator.locks),
  });
  updates.start();
  render(<StartTrouble sentence={describeFault(fault)} updates={updates} />, root);
}
