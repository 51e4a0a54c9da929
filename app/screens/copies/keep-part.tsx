import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { formatCount, joinWords, megabytesInWords } from '../../core/words/numbers.ts';
import type { KeepCopy, MadeCopy } from '../../state/backup/keep-copy.ts';
import type { App } from '../../state/create-app.ts';
import { Button } from '../../ui/controls/button.tsx';
import { ProgressBar } from '../../ui/controls/progress-bar.tsx';
import select from '../../ui/controls/select.module.css';
import styles from './copies-screen.module.css';

interface KeepPartProps {
  keepCopy: KeepCopy;
  store: App['copyNeeds']['store'];
  /** 'box', or the id of a painting, to begin with. */
  what: string;
}

interface Choice {
  readonly id: string;
  readonly title: string;
  readonly damaged: boolean;
}

const [everything, box] = ['everything', 'box'];

/** What goes into the copy, the making of it, and where it goes. */
export function KeepPart({ keepCopy, store, what }: KeepPartProps) {
  const paintings = useSignal<readonly Choice[]>([]);
  const chosen = useSignal(what === box ? box : everything);
  const places = useSignal(false);
  useEffect(() => {
    store.cards().then(
      (cards) => {
        paintings.value = cards
          .filter(({ deletedAt }) => deletedAt === undefined)
          .map(({ id, title, damaged }) => ({ id, title, damaged: damaged === true }));
        if (cards.some(({ id }) => id === what)) chosen.value = what;
      },
      () => undefined, // a copy of everything can be asked for all the same, and says what is wrong
    );
  }, [store, what]);
  const { part, made, problem } = keepCopy;

  const make = (): void => {
    const id = chosen.value;
    const painting = paintings.value.find((each) => each.id === id);
    void keepCopy.make({
      scope: painting
        ? { kind: painting.damaged ? 'remains' : 'painting', id: painting.id }
        : { kind: id === box ? 'box' : 'everything' },
      title: painting?.title ?? (id === box ? 'paint box' : ''),
      places: places.value,
    });
  };
  return (
    <section class={styles.part} aria-label="Keep a copy">
      <h2 class={styles.heading}>Keep a copy</h2>
      <p>
        One file with paintings, photos, plans, records and your paint box. Keep it somewhere else:
        on another device, on a drive or in your email.
      </p>
      <label class={styles.field}>
        <span>What goes into it</span>
        <select
          class={select.select}
          value={chosen.value}
          onChange={(event) => {
            chosen.value = event.currentTarget.value;
          }}
        >
          <option value={everything}>Everything</option>
          <option value={box}>Your paint box only</option>
          {paintings.value.map(({ id, title, damaged }) => (
            <option key={id} value={id}>
              {damaged ? `What is left of ${title}` : title}
            </option>
          ))}
        </select>
      </label>
      <label class={styles.tick}>
        <input
          type="checkbox"
          checked={places.value}
          onChange={(event) => {
            places.value = event.currentTarget.checked;
          }}
        />
        <span>Include where the photos were taken</span>
      </label>
      {problem.value && <p role="alert">{problem.value}</p>}
      {part.value !== null && (
        <div class={styles.work}>
          <p role="status">Putting the copy together …</p>
          <ProgressBar part={part.value} />
          <Button look="quiet" onClick={keepCopy.stop}>
            Stop
          </Button>
        </div>
      )}
      {made.value && <MadePart keepCopy={keepCopy} copy={made.value} />}
      {part.value === null && (
        <Button look={made.value ? 'quiet' : 'main'} large wide onClick={make}>
          {made.value ? 'Make another' : 'Make the copy'}
        </Button>
      )}
    </section>
  );
}

function heldInWords({ scope, paintings, photos = 0 }: MadeCopy): string {
  if (scope.kind === 'box') return 'your paint box';
  if (scope.kind === 'remains') return `${formatCount(photos, 'photo')} and what can be read`;
  return formatCount(paintings, 'painting');
}

function MadePart({ keepCopy, copy }: { keepCopy: KeepCopy; copy: MadeCopy }) {
  const { file, leftOut, canShare } = copy;
  return (
    <div class={styles.made}>
      <p role="status">
        <strong class={styles.name}>{file.name}</strong>: {heldInWords(copy)},{' '}
        {megabytesInWords(file.size)}
        {copy.scope.kind === 'remains'
          ? '. It can’t be brought back; its photos open in any program.'
          : ', read through once and whole.'}
      </p>
      {leftOut.length > 0 && (
        <p role="alert">Damaged, and therefore not in it: {joinWords(leftOut)}.</p>
      )}
      <div class={styles.actions}>
        {canShare && (
          <Button look="main" large wide onClick={() => void keepCopy.share()}>
            Hand it on
          </Button>
        )}
        <Button look={canShare ? 'plain' : 'main'} large wide onClick={() => void keepCopy.save()}>
          Save it as a file
        </Button>
      </div>
      {keepCopy.handedOut.value && <p role="status">{keepCopy.handedOut.value}</p>}
    </div>
  );
}
