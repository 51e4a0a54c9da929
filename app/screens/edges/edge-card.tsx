import type { Edge } from '../../model/edge.ts';
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
}

const meaning: Readonly<Record<EdgeWish, string>> = {
  keep: 'as it is in the photo',
  soften: 'a barely damp brush while it shines',
  lose: 'both sides in one wash',
  sharpen: 'one clear stroke on dry paper',
};

/** One edge: what was measured, in words, and what is to become of it. */
export function EdgeCard({ edge, reading, proposal, onWish }: EdgeCardProps) {
  const [kind, ...facts] = edgeSentences(edge, reading);
  const caution = edge.wish ? wishCaution(edge, edge.wish) : '';
  return (
    <section class={styles.card} aria-label="The edge you touched" data-testid="edge-card">
      <p class={styles.kind}>{kind}</p>
      <p class={styles.facts}>{facts.join(' ')}</p>
      {proposal && !edge.wish && (
        <p class={styles.facts}>
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
            <span class={styles.meaning}>{meaning[wish]}</span>
          </button>
        ))}
      </fieldset>
      {caution && <p role="status">{caution}</p>}
      {edge.wish && <Button onClick={() => onWish(null)}>Take back: as it was measured</Button>}
    </section>
  );
}
