import { useSignal } from '@preact/signals';
import { sentenceOf } from '../../state/sentence-of.ts';
import { Button } from '../common/button.tsx';
import styles from './small-study-offer.module.css';

/** A small study before the painting: what it is, and the way to it. */
export function SmallStudyOffer({ onMake }: { onMake: () => Promise<void> }) {
  const busy = useSignal(false);
  const problem = useSignal<string | null>(null);
  const make = async (): Promise<void> => {
    busy.value = true;
    problem.value = null;
    try {
      await onMake();
    } catch (fault) {
      problem.value = sentenceOf(fault);
    } finally {
      busy.value = false;
    }
  };
  return (
    <section class={styles.offer} aria-label="Small study">
      <Button disabled={busy.value} onClick={() => void make()}>
        Small study first
      </Button>
      <p class={styles.words}>
        The same picture on a postcard: one dark paint, three values. About 20 minutes’ work, and
        the drying between. It is a painting of its own; this one stays as it is.
      </p>
      {problem.value && <p role="alert">{problem.value}</p>}
    </section>
  );
}
