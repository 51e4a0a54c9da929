import styles from './waiting.module.css';

/** Before there is an app: why it can't start yet, and what to do. */
export const StartTrouble = ({ sentence }: { sentence: string }) => (
  <main class={styles.waiting}>
    <h1>Firstwash</h1>
    <p class={styles.words} role="alert">
      {sentence}
    </p>
  </main>
);
