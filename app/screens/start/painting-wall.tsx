import { useSignal } from '@preact/signals';
import type { PaintingCard, Shelf } from '../../state/shelf.ts';
import { Button } from '../common/button.tsx';
import styles from './painting-wall.module.css';

interface PaintingWallProps {
  shelf: Shelf;
  onOpen: (painting: PaintingCard) => void;
}

/** All paintings as pictures. Taking one away asks first and can be undone. */
export function PaintingWall({ shelf, onOpen }: PaintingWallProps) {
  const asking = useSignal<string | null>(null);
  const paintings = shelf.paintings.value;
  const removed = shelf.removed.value;
  if (!paintings.length && !removed) return null;
  return (
    <section class={styles.wall} aria-label="Paintings">
      <h2 class={styles.heading}>Paintings</h2>
      {removed && (
        <p class={styles.removed} role="status">
          {removed.title} was taken away.
          <Button onClick={() => void shelf.bringBack()}>Bring it back</Button>
        </p>
      )}
      <ul class={styles.pictures}>
        {paintings.map((painting) => (
          <li key={painting.id} class={styles.painting}>
            <button type="button" class={styles.open} onClick={() => onOpen(painting)}>
              {painting.picture ? (
                <img class={styles.picture} src={painting.picture} alt="" />
              ) : (
                <span class={styles.picture} />
              )}
              <strong class={styles.title}>{painting.title}</strong>
              <span class={styles.place}>{painting.place}</span>
            </button>
            {asking.value === painting.id ? (
              <span class={styles.ask}>
                <span>Take it away, photo and record too?</span>
                <Button
                  onClick={() => {
                    asking.value = null;
                    void shelf.remove(painting.id);
                  }}
                >
                  Take away
                </Button>
                <Button
                  look="quiet"
                  onClick={() => {
                    asking.value = null;
                  }}
                >
                  Keep
                </Button>
              </span>
            ) : (
              <Button
                look="quiet"
                aria-label={`Take away ${painting.title}`}
                onClick={() => {
                  asking.value = painting.id;
                }}
              >
                Take away
              </Button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
