import { useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { Standstill } from './waiting.tsx';

const notYetHere = 'This part of the app is not on this device yet. Connect once, then try again.';
const olderWindow =
  'This part of the app could not be fetched: perhaps a newer version was taken in another window. Load the page again to go on.';
const reload = (): void => location.reload();

/**
 * A screen fetched when it is first opened, so that the first load stays small. Once the app is kept
 * on the device all its files are there, without a network too.
 */
export function lazyScreen<P extends object>(fetchScreen: () => Promise<ComponentType<P>>) {
  return function Later(props: P) {
    const screen = useSignal<{ readonly Shown: ComponentType<P> } | 'missing' | null>(null);
    const look = (): void => {
      screen.value = null;
      fetchScreen().then(
        (Shown) => {
          screen.value = { Shown };
        },
        () => {
          screen.value = 'missing';
        },
      );
    };
    useEffect(look, []);
    const found = screen.value;
    if (found && found !== 'missing') return <found.Shown {...props} />;
    // A newer version taken in another window has put away the files of this one.
    const older = found && navigator.onLine;
    return (
      <main>
        {older ? (
          <Standstill problem={olderWindow} again="Load it again" onAgain={reload} />
        ) : (
          <Standstill problem={found && notYetHere} onAgain={look} />
        )}
      </main>
    );
  };
}
