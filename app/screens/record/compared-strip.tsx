import { type ComparedNote, comparedSheets } from '../../core/session/compared-sheets.ts';
import { momentInWords } from '../../core/words/dates.ts';
import { notOpened } from '../../core/words/notices.ts';
import { words as told } from '../../core/words/plan/words.ts';
import { measuresInWords } from '../../core/words/session/compared-sheets.ts';
import { linkTo } from '../../state/router.ts';
import { lookAgainAt } from '../../state/session/compare-draft.ts';
import type { Easel } from '../../state/session/easel.ts';
import type { Keepsakes } from '../../state/session/keepsakes.ts';
import { buttonClass } from '../../ui/controls/button.tsx';
import styles from './compared-strip.module.css';
import page from './record-screen.module.css';
import { usePhotoAddress } from './use-photo-address.ts';

interface ComparedStripProps {
  easel: Pick<Easel, 'desk' | 'log'>;
  keepsakes: Pick<Keepsakes, 'photo' | 'keepSetting'>;
  paintingId: string;
}

/** Her sheet stage by stage, as it was photographed, with what was measured of it; and the way to the next photo. */
export function ComparedStrip({ easel, keepsakes, paintingId }: ComparedStripProps) {
  const desk = easel.desk.value;
  if (!desk) return null;
  const notes = comparedSheets(easel.log.value);
  return (
    <section class="stack">
      <h2 class={page.heading}>Your sheet beside the plan</h2>
      {notes.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keys
        <ul class={styles.strip} tabIndex={0} aria-label="Your sheet, stage by stage">
          {notes.map((note) => (
            <StripPhoto
              key={note.photoId}
              note={note}
              title={told(desk.plan.steps.find(({ key }) => key === note.key)?.title)}
              words={measuresInWords(note, desk.seen.reading.bands.length)}
              keepsakes={keepsakes}
              onLook={() => {
                lookAgainAt(keepsakes, desk.sessionId, note).catch(() => undefined); // counts all the same
              }}
              to={linkTo(paintingId, 'compare')}
            />
          ))}
        </ul>
      )}
      <a class={buttonClass('plain', true)} href={linkTo(paintingId, 'compare')}>
        {notes.length > 0 ? 'Compare once more' : 'Compare a photo of your sheet'}
      </a>
    </section>
  );
}

interface StripPhotoProps {
  note: ComparedNote;
  title: string;
  words: string;
  keepsakes: Pick<Keepsakes, 'photo'>;
  /** Before the way there is followed. */
  onLook: () => void;
  to: string;
}

function StripPhoto({ note, title, words, keepsakes, onLook, to }: StripPhotoProps) {
  const { address, gone } = usePhotoAddress(keepsakes, note.photoId);
  const day = momentInWords(note.at);
  return (
    <li class={styles.item}>
      {gone.value ? (
        <p>{notOpened}</p>
      ) : (
        <a
          class={styles.link}
          href={to}
          onClick={onLook}
          aria-label={`Look at it again: ${title}, ${day}`}
        >
          {address.value && <img src={address.value} alt="" loading="lazy" decoding="async" />}
        </a>
      )}
      <h3>{title}</h3>
      <p>{words}</p>
      <p class="quiet">{day}</p>
    </li>
  );
}
