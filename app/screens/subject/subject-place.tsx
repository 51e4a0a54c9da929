import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Studio } from '../../state/studio.ts';
import { Standstill } from '../common/waiting.tsx';

type Shown = (props: { studio: Studio; paintingId: string }) => preact.JSX.Element;

/** Fetched when it is first opened: she may paint for months without circling a subject. */
export function SubjectPlace(props: { studio: Studio; paintingId: string }) {
  const screen = useSignal<{ readonly Shown: Shown } | 'missing' | null>(null);
  const fetchScreen = (): void => {
    screen.value = null;
    import('./subject-screen.tsx').then(
      ({ SubjectScreen }) => {
        screen.value = { Shown: SubjectScreen };
      },
      () => {
        screen.value = 'missing';
      },
    );
  };
  useEffect(fetchScreen, []);
  const found = screen.value;
  if (found === null || found === 'missing')
    return (
      <Standstill
        problem={
          found && 'This part of the app is not on this device yet. Connect once, then try again.'
        }
        onAgain={fetchScreen}
      />
    );
  return <found.Shown {...props} />;
}
