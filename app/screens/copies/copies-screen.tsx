import { useEffect, useMemo } from 'preact/hooks';
import { createBringBack } from '../../state/backup/bring-back.ts';
import { createHandOut } from '../../state/backup/hand-out.ts';
import { createKeepCopy } from '../../state/backup/keep-copy.ts';
import type { App } from '../../state/create-app.ts';
import { nameOfBuild } from '../../state/name-of-build.ts';
import { hashOf } from '../../state/router.ts';
import { PageLayout } from '../../ui/layout/page-layout.tsx';
import { TopBar } from '../../ui/layout/screen-layout.tsx';
import { BringPart } from './bring-part.tsx';
import styles from './copies-screen.module.css';
import { KeepPart } from './keep-part.tsx';

/** One file with all that is here, to be kept elsewhere, and the way back from it. */
type CopiesScreenProps = App['copyNeeds'] & {
  /** What goes into a copy at first: 'box', or the id of a painting; else everything. */
  what: string;
};

export function CopiesScreen({ what, arrived, ...needs }: CopiesScreenProps) {
  const { store, inSessionAnywhere, onBrought } = needs;
  const keepCopy = useMemo(
    () =>
      createKeepCopy({
        store,
        handOut: createHandOut(window),
        app: nameOfBuild(document),
        readTimeMs: Date.now,
      }),
    [store],
  );
  const bringBack = useMemo(
    () => createBringBack({ store, inSessionAnywhere, onBrought }),
    [store, inSessionAnywhere, onBrought],
  );
  useEffect(
    () => () => {
      keepCopy.stop();
      bringBack.stop();
    },
    [keepCopy, bringBack],
  );
  const copy = arrived.value;
  useEffect(() => {
    if (!copy) return;
    arrived.value = null;
    void bringBack.open(copy);
  }, [bringBack, copy]);
  return (
    <PageLayout
      name="copies"
      class={styles.page}
      top={<TopBar title="Copies" back="Paintings" backTo={hashOf({ screen: 'start' })} />}
    >
      <KeepPart keepCopy={keepCopy} store={store} what={what} />
      <BringPart bringBack={bringBack} />
    </PageLayout>
  );
}
