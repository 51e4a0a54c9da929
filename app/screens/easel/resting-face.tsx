import { useEffect, useRef } from 'preact/hooks';
import { timeInWords } from '../../core/words/dates.ts';
import { reachInShort } from '../../core/words/session/reach-words.ts';
import { waitWords } from '../../core/words/session/wait-words.ts';
import type { Easel } from '../../state/session/easel.ts';
import type { EaselSenses } from '../../state/session/easel-senses.ts';
import styles from './resting-face.module.css';

interface RestingFaceProps {
  easel: Pick<Easel, 'time'>;
  senses: Pick<EaselSenses, 'cue' | 'reach' | 'wake'>;
}

/**
 * A dark face over the easel while it dries: the time in large figures, to be read from across the room, and nothing
 * that lights the screen. Once it is time to look it turns light. A touch anywhere leads back.
 */
export function RestingFace({ easel, senses }: RestingFaceProps) {
  const face = useRef<HTMLDialogElement>(null);
  useEffect(() => face.current?.showModal(), []);
  const { drying, wallMs } = easel.time.value;
  if (!drying) return null;
  const { name, lead, look } = waitWords(drying, wallMs);
  const due = senses.cue.value?.kind === 'end';
  return (
    <dialog
      ref={face}
      class={styles.face}
      aria-label="Resting screen"
      data-due={due || undefined}
      data-testid="resting"
      onClose={senses.wake}
    >
      <button type="button" class={styles.all} onClick={() => face.current?.close()}>
        <span>{timeInWords(wallMs)}</span>
        {!due && <span class={styles.look}>{name}</span>}
        <strong class={styles.lead}>{due ? 'Look at the sheet' : lead}</strong>
        <span class={styles.look}>{look}</span>
        <span>{reachInShort(senses.reach.value)}. Touch to go back.</span>
      </button>
    </dialog>
  );
}
