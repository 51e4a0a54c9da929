import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { findReminder, noteCopyTime } from '../../state/backup/copy-reminder.ts';
import type { App } from '../../state/create-app.ts';
import { hashOf } from '../../state/router.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import styles from './start-screen.module.css';

/** One quiet line when much is on this device only; put away it stays away until much has changed again. */
export function CopyLine({ store }: Pick<App['copyNeeds'], 'store'>) {
  const reminder = useSignal<string | null>(null);
  useEffect(() => {
    void findReminder(store, Date.now()).then((found) => {
      reminder.value = found;
    });
  }, [store]);
  if (!reminder.value) return null;
  const putAway = (): void => {
    reminder.value = null;
    void noteCopyTime(store, { awayAt: Date.now() }).catch(() => undefined); // said by the store
  };
  return (
    <p class={styles.copyLine} role="status">
      {reminder.value}
      <a class={buttonClass()} href={hashOf({ screen: 'copies' })}>
        Keep a copy
      </a>
      <Button look="quiet" onClick={putAway}>
        Not now
      </Button>
    </p>
  );
}
