import { useSignal } from '@preact/signals';
import type { ComponentType } from 'preact';
import { useEffect } from 'preact/hooks';
import { Standstill } from './waiting.tsx';

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
    return (
      <Standstill
        problem={
          found && 'This part of the app is not on this device yet. Connect once, then try again.'
        }
        onAgain={look}
      />
    );
  };
}
