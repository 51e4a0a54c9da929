import type { App } from '../../state/create-app.ts';
import { Button } from './button.tsx';
import styles from './notices.module.css';

/** What concerns the whole app: a newer version, and what could not be kept. */
export function Notices({ app }: { app: App }) {
  const { updates, storageProblem } = app;
  return (
    <aside class={styles.notices} aria-label="Notices">
      {storageProblem.value && (
        <p class={styles.notice} role="alert">
          {storageProblem.value}
        </p>
      )}
      {updates.updateReady.value && (
        <p class={styles.notice} role="status" data-testid="update">
          A newer version of Firstwash is ready. Your paintings stay as they are.
          <Button onClick={() => void updates.accept()}>Use it now</Button>
        </p>
      )}
    </aside>
  );
}
