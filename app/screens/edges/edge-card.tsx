import type { RefObject } from 'preact';
import type { Edge, EdgeKind } from '../../model/edge.ts';
import type { EdgeProposal } from '../../model/edge-proposals.ts';
import { type EdgeWish, edgeWishes } from '../../model/edge-wishes.ts';
import { edgeSentences, wishCaution } from '../../model/edge-words.ts';
import type { Reading } from '../../model/reading.ts';
import { Button } from '../common/button.tsx';
import styles from './edge-card.module.css';
import { wishNames } from './wish-names.ts';

interface EdgeCardProps {
  edge: Edge;
  reading: Reading;
  proposal: EdgeProposal | undefined;
  /** null takes her decision back. */
  onWish: (wish: EdgeWish | null) => void;
  card: RefObject<HTMLElement | null>;
}

const keeping: Record<EdgeKind, string> = {
  hard: 'as it is: on dry paper',
  soft: 'as it is: a damp brush, or wet paper',
  found: 'as it is: a small step, on dry paper',
  lost: 'as it is: both sides in one wash',
};

const meaning = (wish: EdgeWish, kind: EdgeKind): string =>
  ({
    keep: keeping[kind],
    soften: 'a clean, barely damp brush along it while it shines',
    lose: 'both sides in one wash, nothing to be seen',
    sharpen: 'one clear stroke, on bone-dry paper',
  })[wish];

/** One edge: what was measured, in words, and what is to become of it. */
export function EdgeCard({ edge, reading, proposal, onWish, card }: EdgeCardProps) {
  const [kind, ...facts] = edgeSentences(edge, reading);
  const caution = edge.wish ? wishCaution(edge, edge.wish) : '';
  return (
    <section
      class={styles.card}
      ref={card}
      aria-label="The edge you touched"
      data-testid="edge-card"
    >
      <p class={styles.kind}>{kind}</p>
      <p>{facts.join(' ')}</p>
      {proposal && !edge.wish && (
        <p>
          Proposed: <strong>{wishNames[proposal.wish].toLowerCase()}</strong>. {proposal.why}
        </p>
      )}
      <fieldset class={styles.choices}>
        <legend class="spoken">What becomes of it</legend>
        {edgeWishes.map((wish) => (
          <button
            key={wish}
            type="button"
            class={styles.choice}
            aria-pressed={edge.wish === wish}
            onClick={() => edge.wish !== wish && onWish(wish)}
          >
            <span class={styles.name}>{wishNames[wish]}</span>
            <span class={styles.meaning}>{meaning(wish, edge.kind)}</span>
          </button>
        ))}
      </fieldset>
      {caution && <p role="status">{caution}</p>}
      {edge.wish && <Button onClick={() => onWish(null)}>Take back: as it was measured</Button>}
    </section>
  );
}
