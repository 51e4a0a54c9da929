import type { App } from '../../state/create-app.ts';
import type { Studio, Work } from '../../state/painting/studio.ts';
import { Button } from '../controls/button.tsx';
import { ProgressBar } from '../controls/progress-bar.tsx';
import styles from './waiting.module.css';

const said: Record<Work['stage'], string> = {
  opening: 'Opening the photo',
  looking: 'Looking at the light',
  values: 'Finding the values',
  colours: 'Grouping the colours',
  shapes: 'Joining the shapes',
  paints: 'Trying the paints in your box',
  washes: 'Working out the washes',
};

/** Instead of the picture: what is being done, or what went wrong and what to do next. */
export function Waiting({ studio }: { studio: Studio }) {
  const work = studio.work.value;
  if (studio.waits.value && !work)
    return (
      <Standstill
        problem="The app stopped last time while it looked at this photo; most likely there was too little memory. Everything else is safe. Try it at a smaller size."
        again="Look at it smaller"
        onAgain={studio.again}
      />
    );
  if (studio.problem.value)
    return <Standstill problem={studio.problem.value} onAgain={studio.again} />;
  return (
    <div class={styles.waiting}>
      <p class={styles.words} role="status">
        {said[work?.stage ?? 'opening']} …
      </p>
      <ProgressBar class={styles.bar} part={work?.part ?? 0} />
      <a class={styles.leave} href="#/">
        Stop and go back
      </a>
    </div>
  );
}

/** The same in one line, where there is already something to look at. */
export function WorkLine({ studio }: { studio: Studio }) {
  const { work, problem } = studio;
  if (problem.value) return <p role="alert">{problem.value}</p>;
  return <p role="status">{work.value && `${said[work.value.stage]} …`}</p>;
}

interface StandstillProps {
  problem: string | null;
  again?: string;
  onAgain: () => void;
}

/** Nothing moves: the cause, and what she can do. */
export function Standstill({ problem, again = 'Try again', onAgain }: StandstillProps) {
  if (!problem)
    return (
      <div class={styles.waiting}>
        <p role="status">Setting up …</p>
      </div>
    );
  return (
    <div class={styles.waiting}>
      <p class={styles.words} role="alert">
        {problem}
      </p>
      <Button onClick={onAgain}>{again}</Button>
      <a class={styles.leave} href="#/">
        Back to the paintings
      </a>
    </div>
  );
}

interface StartTroubleProps {
  sentence: string;
  /** Where loading again, or a newer version, may help. */
  updates?: Pick<App['updates'], 'updateReady' | 'accept'>;
}

/** Before there is an app: why it can't start yet, and what to do. */
export const StartTrouble = ({ sentence, updates }: StartTroubleProps) => (
  <main class={styles.waiting}>
    <h1>Firstwash</h1>
    <p class={styles.words} role="alert">
      {sentence}
    </p>
    {updates?.updateReady.value && (
      <Button look="main" onClick={() => void updates.accept()}>
        Use the newer version
      </Button>
    )}
    {updates && <Button onClick={() => location.reload()}>Load the page again</Button>}
  </main>
);

/** What concerns the whole app: a newer version, and what could not be kept. */
export function Notices({ app }: { app: App }) {
  const { updates, storageProblem } = app;
  return (
    <aside class={styles.notices} aria-label="Notices">
      {storageProblem.value && (
        <p class={styles.notice} role="alert">
          {storageProblem.value}
        </p>
      )}
      {updates.updateReady.value && (
        <p class={styles.notice} role="status" data-testid="update">
          A newer version of Firstwash is ready. Your paintings stay as they are.
          <Button onClick={() => void updates.accept()}>Use it now</Button>
          {updates.waitsForWindow.value &&
            ' You are painting in another window: finish there, or close it, then take it.'}
        </p>
      )}
    </aside>
  );
}
