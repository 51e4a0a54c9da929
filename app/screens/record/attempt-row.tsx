import { type Attempt, listAttempts } from '../../core/session/attempts.ts';
import { dateInWords } from '../../core/words/dates.ts';
import { measuredHours } from '../../core/words/minutes.ts';
import { spellOrdinal } from '../../core/words/numbers.ts';
import { hashOf } from '../../state/router.ts';
import type { Easel } from '../../state/session/easel.ts';
import type { Keepsakes } from '../../state/session/keepsakes.ts';
import styles from './attempt-row.module.css';
import { usePhotoAddress } from './use-photo-address.ts';

interface AttemptRowProps {
  easel: Pick<Easel, 'sessions'>;
  keepsakes: Pick<Keepsakes, 'photo'>;
  paintingId: string;
  /** The one whose record is open. */
  current: string;
}

/** Every time this was painted, side by side, each leading to its record; nothing before the second. */
export function AttemptRow({ easel, keepsakes, paintingId, current }: AttemptRowProps) {
  const attempts = listAttempts(easel.sessions.value, paintingId);
  if (attempts.length < 2) return null;
  return (
    <section class="stack" aria-label="All attempts">
      <h2 class={styles.heading}>All attempts</h2>
      <ol class={styles.attempts}>
        {attempts.map((attempt, i) => (
          <li key={attempt.sessionId}>
            <a
              class={styles.attempt}
              href={hashOf({ screen: 'record', paintingId, sessionId: attempt.sessionId })}
              aria-current={attempt.sessionId === current ? 'page' : undefined}
            >
              <AttemptPicture photoId={attempt.photoId} keepsakes={keepsakes} />
              <strong>The {spellOrdinal(i + 1)}</strong>
              <span>{attemptWords(attempt)}</span>
            </a>
          </li>
        ))}
      </ol>
    </section>
  );
}

const attemptWords = ({ startedAt, finishedAt, minutes }: Attempt): string =>
  finishedAt === null
    ? `${dateInWords(startedAt)}, under way`
    : `${dateInWords(startedAt)}, ${measuredHours(minutes)}`;

interface AttemptPictureProps {
  photoId: string | null;
  keepsakes: Pick<Keepsakes, 'photo'>;
}

function AttemptPicture({ photoId, keepsakes }: AttemptPictureProps) {
  const { address } = usePhotoAddress(keepsakes, photoId);
  if (address.value)
    return <img class={styles.picture} src={address.value} alt="" loading="lazy" />;
  return <span class={styles.none}>No photo</span>;
}
