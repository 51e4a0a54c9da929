import { momentInWords } from '../../core/words/dates.ts';
import { openWithCount, pluralize } from '../../core/words/numbers.ts';
import { arrivalsInWords, bringsNothing } from '../../state/backup/arrival-words.ts';
import type { BringBack } from '../../state/backup/bring-back.ts';
import { hashOf, linkTo } from '../../state/router.ts';
import { AskFirst } from '../../ui/controls/ask-first.tsx';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { FileChooser } from '../../ui/controls/file-chooser.tsx';
import { ProgressBar } from '../../ui/controls/progress-bar.tsx';
import styles from './copies-screen.module.css';

type Checked = NonNullable<BringBack['checked']['value']>;

/** A copy is looked through first; then it is said what would happen; only then anything does. */
export function BringPart({ bringBack }: { bringBack: BringBack }) {
  const { work, checked, done, broughtOne, problem } = bringBack;
  return (
    <section class={styles.part} aria-label="Bring back a copy">
      <h2 class={styles.heading}>Bring back a copy</h2>
      <p>The copy is checked first, and nothing changes until you say so.</p>
      {problem.value && <p role="alert">{problem.value}</p>}
      {done.value && (
        <p role="status">
          It is all here.{' '}
          {broughtOne.value && (
            <a class={buttonClass('main')} href={linkTo(broughtOne.value, 'plan')}>
              To its plan
            </a>
          )}{' '}
          <a
            class={buttonClass(broughtOne.value ? 'plain' : 'main')}
            href={hashOf({ screen: 'start' })}
          >
            To your paintings
          </a>
        </p>
      )}
      {work.value ? (
        <div class={styles.work}>
          <p role="status">
            {work.value.doing === 'checking' ? 'Reading it through …' : 'Bringing it back …'}
          </p>
          <ProgressBar part={work.value.part} />
          <Button look="quiet" onClick={bringBack.stop}>
            Stop
          </Button>
        </div>
      ) : (
        <FileChooser
          text={checked.value ? 'Choose another copy' : 'Choose a copy'}
          field="Copy to bring back"
          accept=".zip,application/zip"
          onFiles={([file]) => file && void bringBack.open(file)}
        />
      )}
      {checked.value && !work.value && <CheckedPart bringBack={bringBack} copy={checked.value} />}
    </section>
  );
}

function CheckedPart({ bringBack, copy }: { bringBack: BringBack; copy: Checked }) {
  const { madeAt, holds, paintings, box, places } = copy;
  return (
    <div class={styles.made}>
      <p role="status">A whole copy, made on {momentInWords(madeAt)}.</p>
      <ul class={styles.list}>
        {arrivalsInWords(paintings).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {box === 'joins' && (
          <li>Your paint box: what you own there is joined with what you own here.</li>
        )}
        {box === 'same' && <li>Your paint box: here already.</li>}
        {!places && paintings.length > 0 && (
          <li>
            Its photos do not say where they were taken. Photos that are here stay as they are.
          </li>
        )}
      </ul>
      {bringsNothing(copy) ? (
        <p>There is nothing in it that is not here.</p>
      ) : (
        <Button look="main" large wide onClick={() => void bringBack.bring('merge')}>
          Bring it back
        </Button>
      )}
      {holds !== 'box' && <ReplacePart bringBack={bringBack} copy={copy} />}
    </div>
  );
}

/** The other way, asked for twice: what is here gives way. */
function ReplacePart({ bringBack, copy }: { bringBack: BringBack; copy: Checked }) {
  const { holds, onlyHere, paintings } = copy;
  if (holds === 'painting' && paintings.every(({ arrival }) => arrival !== 'later here'))
    return null;
  const goes =
    onlyHere > 0
      ? `${openWithCount(onlyHere, 'painting')} that ${pluralize(onlyHere, 'is', 'are')} only here would be deleted for good. `
      : '';
  const isOne = holds === 'painting';
  return (
    <AskFirst
      question={
        isOne
          ? 'What you changed here since would give way to the copy. Sessions stay.'
          : `${goes}All else, your paint box too, would be as in the copy.`
      }
      yes={isOne ? 'Take it' : 'Replace'}
      no="Leave it"
      onYes={() => void bringBack.bring('replace')}
    >
      {isOne ? 'Take the one of the copy' : 'Replace all that is here'}
    </AskFirst>
  );
}
