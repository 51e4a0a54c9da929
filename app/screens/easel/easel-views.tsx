import type { Step } from '../../model/wash-plan.ts';
import { type EaselView, hasPlace } from './easel-view.ts';
import styles from './easel-views.module.css';
import type { EaselViewState } from './use-easel-view.ts';

const names: readonly (readonly [EaselView, string])[] = [
  ['where', 'Where'],
  ['reference', 'Photo'],
  ['band', 'Band'],
  ['sheet', 'Sheet'],
  ['edges', 'Edges'],
];

/** What the picture shows: each one tap. Grey goes with any of them. */
export function EaselViews({ view, step }: { view: EaselViewState; step: Step }) {
  return (
    <fieldset class={styles.views}>
      <legend class="spoken">Picture</legend>
      {names
        .filter(([name]) => name !== 'where' || hasPlace(step))
        .map(([name, text]) => (
          <button
            key={name}
            type="button"
            class={styles.view}
            aria-pressed={view.shown.value === name}
            onClick={() => view.look(name)}
          >
            {text}
          </button>
        ))}
      <button
        type="button"
        class={styles.view}
        aria-pressed={view.grey.value}
        onClick={view.toggleGrey}
      >
        Grey
      </button>
    </fieldset>
  );
}
