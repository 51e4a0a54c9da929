import type { HTMLAttributes, RefObject } from 'preact';
import styles from './stage.module.css';

type StageProps = Omit<HTMLAttributes<HTMLDivElement>, 'class' | 'label' | 'ref'> & {
  /** Name for the tests. */
  name: string;
  /** What a touch does and what the keys do, for a screen reader. */
  label: string;
  class?: string | undefined;
  stageRef?: RefObject<HTMLDivElement | null>;
};

/** Where fingers, the mouse and keys act on a picture: no touch on it scrolls or selects. */
export const Stage = ({ name, label, class: own = '', stageRef, ...rest }: StageProps) => (
  <div
    {...rest}
    ref={stageRef ?? null}
    class={`${styles.stage} ${own}`}
    role="application"
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is worked on by keys from here
    tabIndex={0}
    aria-label={label}
    data-testid={name}
  />
);
