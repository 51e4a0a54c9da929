import type { Intake } from '../../state/intake.ts';
import styles from './example-card.module.css';

/** The example, with its picture: one tap and it is a painting of hers. */
export function ExampleCard({ intake }: { intake: Intake }) {
  return (
    <button type="button" class={styles.card} onClick={() => void intake.example()}>
      <img class={styles.picture} src={intake.examplePicture} alt="" />
      <span class={styles.words}>
        <strong>The example</strong>
        <span>Seed heads in a meadow, last light</span>
      </span>
    </button>
  );
}
